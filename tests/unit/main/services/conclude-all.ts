import type { House } from './work-house.ts';

/** Concludes every stone named as undetermined and has it confirmed: the shortest way to a case that may be reported. */
export async function concludeAll(house: House, stoneIds: readonly string[]): Promise<void> {
  for (const stoneId of stoneIds) {
    const concluded = await house.done(house.examiner, 'conclusions.conclude', { stoneId, conclusion: 'undetermined', reasons: 'Nothing was measured yet.', departure: '' });
    house.pass(5);
    await house.done(house.colleague, 'conclusions.confirm', { conclusionId: concluded.id, agrees: true, reason: '' });
  }
}

import { bundleWork } from '../../../../main/bundle/bundle-work.ts';
import { memorySink } from '../../../../main/bundle/byte-sink.ts';
import { casesOfPeriod } from '../../../../main/bundle/cases-of-period.ts';
import { writeBundle } from '../../../../main/bundle/write-bundle.ts';
import type { Work } from '../../../../main/services/work-context.ts';
import type { House } from '../services/work-house.ts';

/** What writing works with, at the instant of the house. */
export const workOf = (house: House, signal: AbortSignal = new AbortController().signal): Work =>
  bundleWork(house.casebook, house.now(), { session: { personId: null }, signal, emit: () => undefined });

/** The bundle of everything that the house received in 2026. */
export async function bundleOf(house: House, change: Partial<Work> = {}): Promise<Uint8Array<ArrayBuffer>> {
  const period = { from: '2026-01-01', to: '2026-12-31' };
  const cases = await casesOfPeriod(house.casebook, period);
  if (!cases.ok) throw new Error(cases.error.message);
  const sink = memorySink();
  const written = await writeBundle({ cases: cases.value, period, sink }, { ...workOf(house), ...change });
  if (!written.ok) throw new Error(written.error.message);
  return sink.whole();
}

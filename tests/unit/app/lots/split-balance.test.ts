import { describe, expect, test } from 'vitest';
import { balanceOf } from '../../../../app/lots/split-balance.ts';

describe('parts and the lot', () => {
  const lot = { count: 340, weight: 81_400 };
  test('all there, within the tolerance', () => {
    const balance = balanceOf([{ count: 330, weight: 79_000 }, { count: 10, weight: 2390 }], lot, 20);
    expect(balance).toMatchObject({ countDifference: 0, weightDifference: -10 });
    expect(balance.sentences).toEqual([
      { text: 'The parts hold all 340 stones.', wrong: false },
      { text: 'The parts weigh 8.139 ct together, which agrees with the lot’s 8.14 ct to 0.001 ct (tolerance 0.002 ct).', wrong: false },
    ]);
  });
  test('to the last step: at the tolerance it agrees, one step beyond it does not', () => {
    expect(balanceOf([{ count: 340, weight: 81_420 }], lot, 20).sentences[1]!.wrong).toBe(false);
    const beyond = balanceOf([{ count: 339, weight: 81_421 }], lot, 20);
    expect(beyond.sentences.map((s) => s.wrong)).toEqual([true, true]);
    expect(beyond.sentences[0]!.text).toContain('1 stone missing');
    expect(beyond.sentences[1]!.text).toContain('0.0021 ct too much, beyond the tolerance of 0.002 ct');
  });
  test('what was not weighed is not compared', () => {
    expect(balanceOf([{ count: null, weight: null }], lot, 20)).toMatchObject({ countDifference: null, weightDifference: null });
    expect(balanceOf([{ count: 340, weight: 1 }], { count: 340, weight: null }, 20).sentences[1]!.text).toContain('The lot itself was not weighed');
  });
});

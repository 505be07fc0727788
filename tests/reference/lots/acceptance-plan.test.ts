import { describe, expect, test } from 'vitest';
import { acceptancePlan, AQLS, codeLetter, COMPARED_AQLS, INSPECTION_LEVELS, type Aql } from '../../../app/lots/acceptance-plan.ts';

/** Binomial probability of `accept` or fewer of `n` at `p`. */
function accepted(n: number, accept: number, p: number): number {
  let term = (1 - p) ** n;
  let sum = term;
  for (let k = 1; k <= accept; k += 1) {
    term *= ((n - k + 1) / k) * (p / (1 - p));
    sum += term;
  }
  return sum;
}

describe('acceptance plans', () => {
  // MIL-STD-105E (1989), table II-A, normal inspection, compared with a public copy: every cell that holds a plan, level II lots of each letter.
  const LOT: Readonly<Record<string, number>> = { C: 20, D: 40, E: 80, F: 120, G: 200, H: 400, J: 1000, K: 3000, L: 5000, M: 20_000, N: 100_000, P: 400_000, Q: 600_000 };
  test.each<[Aql, string, number, number][]>([
    [[0.65, 'F', 20, 0], [0.65, 'J', 80, 1], [0.65, 'K', 125, 2], [0.65, 'L', 200, 3], [0.65, 'M', 315, 5], [0.65, 'N', 500, 7], [0.65, 'P', 800, 10], [0.65, 'Q', 1250, 14]],
    [[1, 'E', 13, 0], [1, 'H', 50, 1], [1, 'J', 80, 2], [1, 'K', 125, 3], [1, 'L', 200, 5], [1, 'M', 315, 7], [1, 'N', 500, 10], [1, 'P', 800, 14], [1, 'Q', 1250, 21]],
    [[1.5, 'D', 8, 0], [1.5, 'G', 32, 1], [1.5, 'H', 50, 2], [1.5, 'J', 80, 3], [1.5, 'K', 125, 5], [1.5, 'L', 200, 7], [1.5, 'M', 315, 10], [1.5, 'N', 500, 14], [1.5, 'P', 800, 21]],
    [[2.5, 'C', 5, 0], [2.5, 'F', 20, 1], [2.5, 'G', 32, 2], [2.5, 'H', 50, 3], [2.5, 'J', 80, 5], [2.5, 'K', 125, 7], [2.5, 'L', 200, 10], [2.5, 'M', 315, 14], [2.5, 'N', 500, 21]],
  ])('table II-A', (...cells) => {
    for (const [aql, letter, sample, accept] of cells) expect(acceptancePlan(LOT[letter]!, 'II', aql)).toMatchObject({ letter, planLetter: letter, sample, accept, refuse: accept + 1 });
  });
  test.each([[200, 0.65, 20, 0], [200, 1, 50, 1], [400, 0.65, 80, 1], [120, 1, 13, 0], [120, 1.5, 32, 1], [40, 0.65, 20, 0], [40, 2.5, 5, 0], [600_000, 1.5, 800, 21]] as const)(
    'an arrow brings the sample of the plan it leads to: lot %i at %f is %i, accept on %i', (lot, aql, sample, accept) => {
      expect(acceptancePlan(lot, 'II', aql)).toMatchObject({ sample, accept });
    });
  test('a sample as large as the lot is the whole lot', () => {
    expect(acceptancePlan(10, 'II', 1)).toMatchObject({ letter: 'B', planLetter: 'E', sample: 10, all: true });
  });
  // MIL-STD-105E table I.
  test('code letters at the edges of the rows', () => {
    expect([2, 8, 9, 150, 151, 280, 281, 1200, 1201, 500_000, 500_001].map((lot) => codeLetter(lot, 'II')).join('')).toBe('AABFGGHJKPQ');
    expect([50, 500].map((lot) => INSPECTION_LEVELS.map((level) => codeLetter(lot, level)).join(''))).toEqual(['ABBCCDE', 'BCDEFHJ']);
  });
  // Binomial, computed with scipy 1.17.1: 80/2 at 1 %, 50/1 at 1 %, 13/0 at 1 %, 125/3 at 1 %, 20/0 and 80/1 at 0.65 %, 80/3 at 1.5 %, 50/3 at 2.5 %.
  test('how likely a lot at the limit is accepted', () => {
    const at = (lot: number, aql: Aql): number => { const plan = acceptancePlan(lot, 'II', aql); return Number(accepted(plan.sample, plan.accept, aql / 100).toFixed(5)); };
    expect([at(1000, 1), at(400, 1), at(120, 1), at(3000, 1), at(120, 0.65), at(1000, 0.65), at(1000, 1.5), at(400, 2.5)]).toEqual([0.95345, 0.91056, 0.87752, 0.96255, 0.87772, 0.90416, 0.96741, 0.9638]);
  });
  test('the columns that are from memory behave as the compared ones do: a lot at its limit is accepted in 87 to 100 of 100', () => {
    for (const aql of AQLS) for (const lot of Object.values(LOT)) {
      const { sample, accept, all } = acceptancePlan(lot, 'II', aql);
      if (!all) expect(accepted(sample, accept, aql / 100), `${lot} at ${aql}`).toBeGreaterThan(0.87);
    }
    expect(COMPARED_AQLS.every((aql) => AQLS.includes(aql))).toBe(true);
  });
});

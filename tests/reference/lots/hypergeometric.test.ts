import { describe, expect, test } from 'vitest';
import { atLeast, atMost, probabilityOf } from '../../../app/lots/hypergeometric.ts';

/** Exact by integers: ways of choosing. */
function ways(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let result = 1n;
  for (let i = 1; i <= k; i += 1) result = (result * BigInt(n - k + i)) / BigInt(i);
  return result;
}
const exact = (found: number, lot: number, grown: number, sample: number): number =>
  Number((ways(grown, found) * ways(lot - grown, sample - found) * 10n ** 30n) / ways(lot, sample)) / 1e30;

describe('hypergeometric probabilities', () => {
  test('every case of lots up to 16 stones, against exact integers', () => {
    for (let lot = 1; lot <= 16; lot += 1) for (let grown = 0; grown <= lot; grown += 1) for (let sample = 0; sample <= lot; sample += 1) {
      let below = 0;
      for (let found = 0; found <= sample; found += 1) {
        const draw = { lot, grown, sample };
        const p = exact(found, lot, grown, sample);
        below += p;
        expect(Math.abs(probabilityOf(found, draw) - p)).toBeLessThan(1e-13);
        expect(Math.abs(atMost(found, draw) - below)).toBeLessThan(1e-12);
        expect(Math.abs(atLeast(found + 1, draw) - (1 - below))).toBeLessThan(1e-12);
      }
    }
  });
  // R 4: phyper(1, 5, 95, 20).
  test('a value of R', () => {
    expect(atMost(1, { lot: 100, grown: 5, sample: 20 })).toBeCloseTo(0.7394534446, 10);
  });
  // Python 3: float(Fraction(comb(D, k) * comb(N - D, n - k), comb(N, n))), exact rationals; scipy.stats.hypergeom is good to ten digits only at the large lots.
  test.each([
    [3, 340, 20, 60, 0.2364300715625707],
    [0, 1_000_000, 1000, 3000, 0.04948859534165795],
    [10, 1_000_000, 200, 50_000, 0.1283702110204628],
  ])('%i of a lot of %i with %i, sample %i: exact rationals', (found, lot, grown, sample, p) => {
    expect(Math.abs(probabilityOf(found, { lot, grown, sample }) / p - 1)).toBeLessThan(1e-12);
  });
  // scipy.stats.hypergeom 1.17.1: cdf(k, N, D, n) and sf(k - 1, N, D, n).
  test.each([
    [3, 340, 20, 60, 0.5168003920450963, 0.7196296795174744],
    [250, 1_000_000, 5000, 50_000, 0.5168211154024319, 0.5091219666839093],
    [2, 80, 10, 30, 0.19373157026349322, 0.9481107205768673],
  ])('tails of %i, lot %i, %i, sample %i: scipy', (found, lot, grown, sample, below, above) => {
    expect(atMost(found, { lot, grown, sample })).toBeCloseTo(below, 9);
    expect(atLeast(found, { lot, grown, sample })).toBeCloseTo(above, 9);
  });
  test('impossible draws are faults, not numbers', () => {
    expect(() => probabilityOf(0, { lot: 10, grown: 11, sample: 2 })).toThrow(RangeError);
    expect(() => atMost(0, { lot: 10, grown: 1.5, sample: 2 })).toThrow(RangeError);
  });
});

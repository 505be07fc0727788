import { describe, expect, test } from 'vitest';
import { probabilityOf } from '../../../app/lots/hypergeometric.ts';
import { highest, lotBounds } from '../../../app/lots/lot-bounds.ts';
import { clopperPearson } from '../../../app/evaluation/clopper-pearson.ts';
import { slowness } from '../../fixtures/slowness.ts';

describe('limits of the number in a lot', () => {
  // Computed with scipy.stats.hypergeom 1.17.1: the largest D with cdf(c, N, D, n) > 1 − confidence, one-sided.
  test.each([
    [20, 5, 0, 6, 8, 10], [50, 13, 0, 7, 8, 13], [50, 20, 0, 4, 5, 8], [50, 50, 0, 0, 0, 0], [100, 13, 0, 15, 19, 27], [100, 20, 0, 9, 12, 18], [100, 20, 1, 16, 19, 26],
    [100, 50, 0, 3, 4, 6], [100, 50, 1, 6, 7, 9], [200, 32, 0, 12, 16, 24], [500, 50, 0, 21, 27, 41], [500, 50, 1, 36, 43, 60], [500, 80, 2, 30, 36, 47],
    [1000, 80, 0, 27, 35, 53], [1000, 80, 1, 46, 56, 77], [1000, 200, 0, 10, 13, 20],
  ])('lot %i, sample %i, found %i: at most %i, %i, %i', (lot, sample, found, at90, at95, at99) => {
    expect([0.9, 0.95, 0.99].map((confidence) => lotBounds({ lot, sample, found }, confidence, 'upper').high)).toEqual([at90, at95, at99]);
  });
  // The same way, both sides at 2.5 per cent: smallest D with sf(c − 1, N, D, n) > 0.025, largest with cdf(c, N, D, n) > 0.025.
  test.each([
    [340, 60, 2, 2, 36], [340, 60, 0, 0, 18], [1000, 125, 3, 6, 65], [500, 80, 2, 2, 41], [120, 30, 5, 9, 38], [50, 20, 20, 44, 50], [2000, 200, 10, 51, 176],
  ])('lot %i, sample %i, found %i: %i to %i', (lot, sample, found, low, high) => {
    expect(lotBounds({ lot, sample, found }, 0.95, 'both')).toEqual({ low, high });
  });
  test('they hold the truth at least as often as they say, whatever the lot: every lot of 30, every sample', () => {
    for (const sides of ['upper', 'both'] as const) for (const confidence of [0.8, 0.95]) for (let sample = 1; sample <= 30; sample += 1) {
      const limits = Array.from({ length: sample + 1 }, (_, found) => lotBounds({ lot: 30, sample, found }, confidence, sides));
      for (let grown = 0; grown <= 30; grown += 1) {
        let held = 0;
        for (let found = 0; found <= Math.min(sample, grown); found += 1) {
          const { low, high } = limits[found]!;
          if (low <= grown && grown <= high) held += probabilityOf(found, { lot: 30, grown, sample });
        }
        expect(held).toBeGreaterThan(confidence - 1e-9);
      }
    }
  });
  test('a wider limit would be no tighter: one stone fewer breaks the promise', () => {
    for (let sample = 2; sample <= 28; sample += 1) {
      const high = highest({ lot: 30, sample, found: 0 }, 0.05);
      if (high > 0 && high < 30 - sample) expect(probabilityOf(0, { lot: 30, grown: high + 1, sample })).toBeLessThanOrEqual(0.05 + 1e-12);
      if (high > 0) expect(probabilityOf(0, { lot: 30, grown: high, sample })).toBeGreaterThan(0.05);
    }
  });
  test('a large lot approaches the limits of a proportion (Clopper and Pearson 1934)', () => {
    const { low, high } = lotBounds({ lot: 1_000_000, sample: 50, found: 3 }, 0.95, 'both');
    const proportion = clopperPearson(3, 50);
    expect(low / 1e6).toBeCloseTo(proportion.low, 4);
    expect(high / 1e6).toBeCloseTo(proportion.high, 4);
  });
  test('all tested: exactly what was found', () => {
    expect(lotBounds({ lot: 40, sample: 40, found: 7 }, 0.99, 'both')).toEqual({ low: 7, high: 7 });
  });
  test('a lot of a million takes milliseconds', () => {
    const sampled = { lot: 1_000_000, sample: 200_000, found: 40_000 };
    lotBounds(sampled, 0.95, 'both');
    const from = performance.now();
    const { low, high } = lotBounds(sampled, 0.95, 'both');
    expect(performance.now() - from).toBeLessThan(400 * slowness());
    expect(low).toBeLessThan(200_000);
    expect(high).toBeGreaterThan(200_000);
  });
});

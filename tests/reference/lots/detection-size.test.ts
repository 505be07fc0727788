import { describe, expect, test } from 'vitest';
import { detectionSize, stonesOfPercent } from '../../../app/lots/detection-size.ts';
import { probabilityOf } from '../../../app/lots/hypergeometric.ts';

describe('how many to test', () => {
  // Computed with scipy.stats.hypergeom 1.17.1; (100, 1): the probability is exactly 0.05, so 95 suffice.
  test.each([[50, 1, 48], [50, 2, 39], [50, 5, 22], [100, 1, 95], [100, 2, 78], [100, 5, 45], [100, 10, 25], [500, 5, 225], [500, 25, 56], [1000, 10, 258], [1000, 50, 57]])(
    'a lot of %i with %i: %i', (lot, grown, size) => { expect(detectionSize(lot, grown, 0.95)).toBe(size); });
  // The same, by per cent of the lot and confidence.
  test.each([[340, 1, 0.95, 4, 179], [340, 5, 0.95, 17, 54], [1000, 1, 0.99, 10, 368], [5000, 0.5, 0.95, 25, 564], [10_000, 1, 0.95, 100, 294]])(
    'a lot of %i at %f per cent, %f: %i stones, test %i', (lot, percent, confidence, stones, size) => {
      expect(stonesOfPercent(lot, percent)).toBe(stones);
      expect(detectionSize(lot, stones, confidence)).toBe(size);
    });
  // Very large lots approach n = ln(1 − c)/ln(1 − p): 59 at 5 per cent, 299 at 1 per cent and 95 per cent confidence, the binomial’s.
  test('very large lots', () => {
    expect(detectionSize(1_000_000, stonesOfPercent(1_000_000, 5), 0.95)).toBe(59);
    expect(detectionSize(1_000_000, stonesOfPercent(1_000_000, 1), 0.95)).toBe(299);
  });
  test('one stone fewer never suffices, every lot up to 60', () => {
    for (let lot = 2; lot <= 60; lot += 1) for (const grown of [1, 2, Math.ceil(lot / 4)]) {
      const size = detectionSize(lot, grown, 0.95);
      expect(probabilityOf(0, { lot, grown, sample: size })).toBeLessThanOrEqual(0.05 + 1e-12);
      expect(probabilityOf(0, { lot, grown, sample: size - 1 })).toBeGreaterThan(0.05 + 1e-12);
    }
  });
});

import { describe, expect, test } from 'vitest';
import { drawSample } from '../../../../app/lots/draw-sample.ts';

describe('a drawn list', () => {
  test('the same start gives the same list, another start another', () => {
    expect(drawSample(340, 60, 7)).toEqual(drawSample(340, 60, 7));
    expect(drawSample(340, 60, 7)).not.toEqual(drawSample(340, 60, 8));
    expect(drawSample(340, 8, 4_294_967_295)).toHaveLength(8);
  });
  test('numbers of the lot, each once, ascending; the whole lot gives all', () => {
    for (const [lot, size] of [[340, 60], [10, 1], [1_000_000, 3000]] as const) {
      const list = drawSample(lot, size, 3);
      expect(new Set(list).size).toBe(size);
      expect(list.every((n, i) => n >= 1 && n <= lot && (i === 0 || n > list[i - 1]!))).toBe(true);
    }
    expect(drawSample(12, 12, 5)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });
  test('every pair of six is drawn about equally often', () => {
    const counts = new Map<string, number>();
    const draws = 15_000;
    for (let seed = 0; seed < draws; seed += 1) {
      const key = drawSample(6, 2, seed).join('-');
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    expect(counts.size).toBe(15);
    const chiSquare = [...counts.values()].reduce((sum, n) => sum + (n - draws / 15) ** 2 / (draws / 15), 0);
    // 14 degrees of freedom: above 36.1 once in a thousand.
    expect(chiSquare).toBeLessThan(36.1);
  });
});

import { expect, test } from 'vitest';
import { decimate } from '../../../../app/figure/decimate.ts';
import { seeded } from './seeded.ts';

const noisy = (count: number, seed: number): { x: number[]; y: number[] } => {
  const random = seeded(seed);
  return { x: Array.from({ length: count }, (_, i) => 400 + (i * 450) / (count - 1)), y: Array.from({ length: count }, () => random()) };
};

test('keeps the extremes of every column and no more than two points each', () => {
  const { x, y } = noisy(20_000, 3);
  y[12_345] = 50;
  y[777] = -50;
  const [piece] = decimate(x, y, 400, 850, 300);
  expect(piece!.x.length).toBeLessThanOrEqual(600);
  for (let column = 0; column < 300; column++) {
    const low = 400 + column * 1.5;
    const inColumn = (list: readonly number[], values: readonly number[]): number[] => values.filter((_, i) => Math.min(299, Math.floor((list[i]! - 400) / 1.5)) === Math.floor((low - 400) / 1.5));
    const all = inColumn(x, y);
    const kept = inColumn(piece!.x, piece!.y);
    expect(Math.max(...kept)).toBe(Math.max(...all));
    expect(Math.min(...kept)).toBe(Math.min(...all));
  }
});

test('points stay in their order, rising or falling', () => {
  const { x, y } = noisy(5000, 4);
  const rising = decimate(x, y, 400, 850, 100)[0]!.x;
  expect(rising).toEqual([...rising].sort((a, b) => a - b));
  const falling = decimate([...x].reverse(), [...y].reverse(), 850, 400, 100)[0]!.x;
  expect(falling).toEqual([...falling].sort((a, b) => b - a));
  expect(new Set(falling)).toEqual(new Set(rising));
});

test('a zoom keeps one neighbour outside on each side, so that the stroke reaches the frame', () => {
  const x = [0, 1, 2, 3, 4, 5, 6, 7, 8];
  expect(decimate(x, x, 3, 5, 10)).toEqual([{ x: [2, 3, 4, 5, 6], y: [2, 3, 4, 5, 6] }]);
});

test('a gap divides the curve', () => {
  expect(decimate([1, 2, 3, 4, 5], [1, 2, Number.NaN, 4, 5], 1, 5, 10)).toEqual([{ x: [1, 2], y: [1, 2] }, { x: [4, 5], y: [4, 5] }]);
});

test('nothing inside, nothing drawn but the neighbours', () => {
  expect(decimate([], [], 0, 1, 10)).toEqual([]);
  expect(decimate([Number.NaN], [1], 0, 1, 10)).toEqual([]);
});

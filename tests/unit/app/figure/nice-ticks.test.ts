import { expect, test } from 'vitest';
import { decimalsOf, niceRange, niceTicks } from '../../../../app/figure/nice-ticks.ts';
import { seeded } from './seeded.ts';

test.each([
  [400, 850, 9, [400, 450, 500, 550, 600, 650, 700, 750, 800, 850]],
  [0, 1, 5, [0, 0.2, 0.4, 0.6, 0.8, 1]],
  [-1, 1, 4, [-1, -0.5, 0, 0.5, 1]],
  [4000, 400, 6, [1000, 2000, 3000, 4000]],
])('ticks from %d to %d', (from, to, most, values) => {
  expect(niceTicks(from, to, most).values).toEqual(values);
});

test('ticks lie inside, evenly, and are told apart by their decimals, over random ranges', () => {
  const random = seeded(9);
  for (let round = 0; round < 2000; round++) {
    const low = (random() - 0.5) * 10 ** (random() * 12 - 6);
    const high = low + 10 ** (random() * 12 - 6);
    const ticks = niceTicks(low, high, 1 + Math.floor(random() * 12));
    if (ticks.values.length === 0) continue;
    const slack = ticks.step * 1e-5;
    for (const value of ticks.values) expect(value >= low - slack && value <= high + slack).toBe(true);
    const printed = ticks.values.map((value) => value.toFixed(Math.min(20, ticks.decimals)));
    expect(new Set(printed).size).toBe(printed.length);
  }
});

test('no ticks on an empty or endless range', () => {
  for (const [from, to] of [[1, 1], [0, Number.POSITIVE_INFINITY], [Number.NaN, 1]] as const) expect(niceTicks(from, to, 5).values).toEqual([]);
});

test('decimals of a step', () => {
  expect([1, 0.5, 0.25, 0.1, 2.5, 200].map(decimalsOf)).toEqual([0, 1, 2, 1, 1, 0]);
});

test('a nice range holds the given one and ends on its ticks', () => {
  expect(niceRange(0, 27_300, 5)).toEqual([0, 30_000]);
  expect(niceRange(-0.02, 0.93, 5)).toEqual([-0.2, 1]);
  expect(niceRange(3, 3, 5)).toEqual([3, 3]);
});

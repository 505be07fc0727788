import { describe, expect, test } from 'vitest';
import { onCommonAxis } from '../../../../app/spectra/common-axis.ts';
import { combineCurves } from '../../../../app/spectra/combine-curves.ts';
import { resample, RESAMPLINGS } from '../../../../app/spectra/resample.ts';
import { risingPoints } from '../../../../app/spectra/rising-points.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';

const f = (...values: number[]): Float64Array => Float64Array.from(values);
const grid = (from: number, to: number, count: number): Float64Array => Float64Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
const area = (x: Float64Array, y: Float64Array): number => x.reduce((sum, at, i) => (i === 0 ? 0 : sum + 0.5 * (at - x[i - 1]!) * (y[i]! + y[i - 1]!)), 0);
/** A Gaussian of width sigma at 50. */
const line = (sigma: number) => (at: number): number => Math.exp(-0.5 * ((at - 50) / sigma) ** 2);

describe('resampling', () => {
  test.each(RESAMPLINGS)('%s: nothing is invented outside the curve', (how) => {
    const out = resample({ x: f(1, 2, 3), y: f(10, 20, 30) }, f(0.5, 1, 2, 3, 3.5), how);
    expect([out[0], out[4]]).toEqual([Number.NaN, Number.NaN]);
    expect([out[1], out[2], out[3]].every(Number.isFinite)).toBe(true);
  });
  test.each(['linear', 'cubic'] as const)('%s: on its own points a curve stays as it is', (how) => {
    const r = seededRandom(3);
    const x = grid(400, 700, 50);
    const y = x.map(() => r.between(-5, 5));
    expect([...resample({ x, y }, x, how)]).toEqual([...y]);
  });
  test.each(RESAMPLINGS)('%s: a straight line stays straight inside, on rising and falling grids', (how) => {
    const x = grid(0, 10, 21);
    const y = x.map((at) => 3 * at - 4);
    for (const onto of [grid(0.7, 9.4, 13), grid(9.4, 0.7, 13)]) resample({ x, y }, onto, how).forEach((value, i) => { expect(value).toBeCloseTo(3 * onto[i]! - 4, 10); });
  });
  test('a cubic follows a smooth band several times closer than a straight line', () => {
    const x = grid(0, 100, 51);
    const y = x.map(line(8));
    const onto = grid(0, 100, 401);
    const worst = (how: 'linear' | 'cubic') => Math.max(...resample({ x, y }, onto, how).map((value, i) => Math.abs(value - line(8)(onto[i]!))));
    expect(worst('linear')).toBeGreaterThan(0.007);
    expect(worst('cubic')).toBeLessThan(0.35 * worst('linear'));
  });
  test('a cubic never leaves the span of its neighbours', () => {
    const r = seededRandom(8);
    const x = grid(0, 30, 31);
    const y = x.map(() => r.between(0, 1));
    const onto = grid(0, 30, 3001);
    resample({ x, y }, onto, 'cubic').forEach((value, i) => {
      const k = Math.min(29, Math.floor(onto[i]! + 1e-9));
      expect(value).toBeGreaterThanOrEqual(Math.min(y[k]!, y[k + 1]!) - 1e-12);
      expect(value).toBeLessThanOrEqual(Math.max(y[k]!, y[k + 1]!) + 1e-12);
    });
  });
  test('the area of a narrow line survives a coarser grid, where reading between points would change it', () => {
    const fine = grid(0, 100, 2001);
    const y = fine.map(line(0.4));
    const coarse = grid(0.5, 99.5, 50);
    const kept = resample({ x: fine, y }, coarse, 'area');
    expect(area(coarse, kept)).toBeCloseTo(area(fine, y), 6);
    expect(area(coarse, resample({ x: fine, y }, coarse, 'linear')) / area(fine, y)).toBeLessThan(0.5);
  });
  test('averaging lowers noise as the square root of the points in a cell', () => {
    const r = seededRandom(11);
    const x = grid(0, 1000, 40_001);
    const noise = x.map(() => r.normal());
    const out = resample({ x, y: noise }, grid(10, 990, 1000), 'area');
    const sd = Math.sqrt(out.reduce((sum, value) => sum + value * value, 0) / out.length);
    expect(sd * Math.sqrt(39.24)).toBeGreaterThan(0.9);
    expect(sd * Math.sqrt(39.24)).toBeLessThan(1.1);
  });
  test('points that are no number, fall or repeat are put in order first', () => {
    expect(risingPoints(f(3, 2, Number.NaN, 2, 1), f(30, 20, 0, 21, Number.NaN))).toEqual({ x: f(2, 3), y: f(20, 30) });
  });
});

describe('a common axis', () => {
  test('is that of the coarsest curve, over the range that all cover', () => {
    const fine = { x: grid(400, 800, 4001), y: grid(400, 800, 4001) };
    const coarse = { x: grid(900, 500, 81), y: grid(900, 500, 81) };
    const common = onCommonAxis([fine, coarse]);
    expect(common.ok && [common.value.x[0], common.value.x.at(-1), common.value.x.length]).toEqual([500, 800, 61]);
    expect(common.ok && common.value.ys.every((y) => y.every((value, i) => Math.abs(value - common.value.x[i]!) < 1e-9 || i === 0 || i === 60))).toBe(true);
  });
  test('curves on one grid keep their values to the last digit', () => {
    const x = grid(1, 2, 7);
    const common = onCommonAxis([{ x, y: x.map(Math.sin) }, { x, y: x.map(Math.cos) }]);
    expect(common.ok && [...common.value.ys[1]!]).toEqual([...x.map(Math.cos)]);
  });
  test('without a range in common there is none, and it is said', () => {
    for (const other of [{ x: f(3, 4, 5), y: f(1, 1, 1) }, { x: f(), y: f() }]) {
      const common = onCommonAxis([{ x: f(1, 2, 2.5), y: f(1, 1, 1) }, other]);
      expect(common.ok ? null : common.error.message).toMatch(/no range in common/);
    }
  });
});

describe('difference and ratio', () => {
  const x = grid(500, 700, 2001);
  const glow = (at: number): number => 1000 + 2 * (at - 500);
  const band = (at: number): number => 300 * Math.exp(-0.5 * ((at - 600) / 5) ** 2);
  test('what one curve has more of remains', () => {
    const other = grid(500, 700, 501);
    const out = combineCurves({ x, y: x.map((at) => glow(at) + band(at)) }, { x: other, y: other.map(glow) }, 'difference');
    expect(out.ok && out.value.x.length).toBe(501);
    if (out.ok) out.value.x.forEach((at, i) => { if (i > 0 && i < 500) expect(Math.abs(out.value.y[i]! - band(at))).toBeLessThan(0.2); });
  });
  test('a curve over itself is one everywhere, over nothing it has gaps', () => {
    const same = combineCurves({ x, y: x.map(glow) }, { x, y: x.map(glow) }, 'ratio');
    expect(same.ok && same.value.y.every((value) => value === 1)).toBe(true);
    const gaps = combineCurves({ x, y: x.map(glow) }, { x, y: x.map((at) => (at < 600 ? 0 : 500)) }, 'ratio');
    expect(gaps.ok && [Number.isNaN(gaps.value.y[0]), gaps.value.y.at(-1)]).toEqual([true, glow(700) / 500]);
  });
});

import { describe, expect, test } from 'vitest';
import { columnsFor } from '../../../../renderer/spectrum/columns-for.ts';
import { exportedCurves } from '../../../../renderer/spectrum/exported-curves.ts';
import { nearestPoint } from '../../../../renderer/spectrum/nearest-point.ts';
import { normaliseCurve } from '../../../../renderer/spectrum/normalise-curve.ts';
import { mainCurves, overlayCurve, positionsOn, wholeRange, type CurveChoice, type LoadedCurves } from '../../../../renderer/spectrum/prepare-curves.ts';

const f = (...values: number[]) => Float64Array.from(values);
const CURVES: LoadedCurves = { xUnit: 'nm', yUnit: 'counts', laserNm: 532, x: f(540, 560, 580), raw: f(10, 30, 12), smoothed: f(11, 28, 13), baseline: f(9, 10, 11) };
const CHOICE: CurveChoice = { axis: 'nm', mode: 'processed', baseline: 'hidden', normalise: false };

describe('what is drawn', () => {
  test('raw, processed, and with the baseline taken off', () => {
    expect([...mainCurves(CURVES, 'R1', { ...CHOICE, mode: 'raw' })[0]!.y as Float64Array]).toEqual([10, 30, 12]);
    expect([...mainCurves(CURVES, 'R1', CHOICE)[0]!.y as Float64Array]).toEqual([11, 28, 13]);
    expect([...mainCurves(CURVES, 'R1', { ...CHOICE, baseline: 'subtracted' })[0]!.y as Float64Array]).toEqual([2, 18, 2]);
  });
  test('a drawn baseline is a dashed curve of its own', () => {
    const drawn = mainCurves(CURVES, 'R1', { ...CHOICE, baseline: 'drawn' });
    expect(drawn.map((c) => [c.label, c.dash])).toEqual([['R1', false], ['baseline', true]]);
  });
  test('a curve that was not analysed is drawn as it was read', () => {
    const bare = { ...CURVES, smoothed: f(), baseline: f() };
    expect([...mainCurves(bare, 'R1', { ...CHOICE, baseline: 'subtracted' })[0]!.y as Float64Array]).toEqual([10, 30, 12]);
  });
  test('each curve is shifted by its own laser', () => {
    const a = positionsOn(CURVES, 'raman-shift');
    const b = positionsOn({ ...CURVES, laserNm: 514.5 }, 'raman-shift');
    expect(b[0]! - a[0]!).toBeGreaterThan(600);
    expect([...positionsOn({ ...CURVES, laserNm: null }, 'raman-shift')].every(Number.isNaN)).toBe(true);
  });
  test('an overlay leaves ink and dash to its place in the list', () => {
    expect(overlayCurve(CURVES, 'R2', CHOICE)).not.toHaveProperty('ink');
  });
  test('the whole goes from the lowest to the highest position of all', () => {
    expect(wholeRange([{ x: f(3, 2, 1) }, { x: f(Number.NaN, 7) }])).toEqual([1, 7]);
    expect(wholeRange([{ x: f(Number.NaN) }])).toBeNull();
  });
});

describe('helpers of the figure', () => {
  test('a scaled curve runs from 0 to 1, a flat one stays at 0', () => {
    expect([...normaliseCurve([5, 10, 7.5])]).toEqual([0, 1, 0.5]);
    expect([...normaliseCurve([4, 4])]).toEqual([0, 0]);
  });
  test('the nearest point is found on rising and falling axes', () => {
    expect(nearestPoint([1, 2, 4, 8], 5.9)).toBe(2);
    expect(nearestPoint([8, 4, 2, 1], 7)).toBe(0);
    expect(nearestPoint([], 1)).toBe(-1);
    expect(nearestPoint([3], 100)).toBe(0);
  });
  test('twenty-one curves together stay within what can be drawn at once', () => {
    expect(columnsFor(1600, 1)).toBe(1600);
    expect(columnsFor(1600, 21) * 2 * 21).toBeLessThanOrEqual(14_000);
    expect(columnsFor(1600, 500)).toBeGreaterThanOrEqual(240);
  });
  test('an export names what it holds and leaves out what is not there', () => {
    expect(exportedCurves(CURVES).map((c) => c.title)).toEqual(['as read', 'processed', 'baseline']);
    expect(exportedCurves({ ...CURVES, smoothed: f(), baseline: f() }).map((c) => c.title)).toEqual(['as read']);
  });
});

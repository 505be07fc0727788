import { describe, expect, test } from 'vitest';
import { columnsFor } from '../../../../renderer/spectrum/columns-for.ts';
import { drawnCurves, type Layer, type Together } from '../../../../renderer/spectrum/drawn-curves.ts';
import { exportedAsShown, exportedCurves } from '../../../../renderer/spectrum/exported-curves.ts';
import { nearestPoint } from '../../../../renderer/spectrum/nearest-point.ts';
import { positionsOn, wholeRange, type CurveChoice, type LoadedCurves } from '../../../../renderer/spectrum/prepare-curves.ts';

const f = (...values: number[]) => Float64Array.from(values);
const CURVES: LoadedCurves = { xUnit: 'nm', yUnit: 'counts', laserNm: 532, x: f(540, 560, 580), raw: f(10, 30, 12), smoothed: f(11, 28, 13), baseline: f(9, 10, 11) };
const CHOICE: CurveChoice = { axis: 'nm', mode: 'processed', baseline: 'hidden', values: null, pathCm: undefined };
const ALONE: Together = { scale: 'measured', at: null, combine: null, partner: 1 };
const layer = (label: string, curves: LoadedCurves = CURVES, diamondHeight: number | null = null): Layer => ({ label, curves, diamondHeight });
const draw = (choice: CurveChoice, curves: LoadedCurves = CURVES) => drawnCurves([layer('R1', curves)], choice, ALONE).curves;

describe('what is drawn', () => {
  test('raw, processed, and with the baseline taken off', () => {
    expect([...draw({ ...CHOICE, mode: 'raw' })[0]!.y as Float64Array]).toEqual([10, 30, 12]);
    expect([...draw(CHOICE)[0]!.y as Float64Array]).toEqual([11, 28, 13]);
    expect([...draw({ ...CHOICE, baseline: 'subtracted' })[0]!.y as Float64Array]).toEqual([2, 18, 2]);
  });
  test('a drawn baseline is a dashed curve of its own', () => {
    const drawn = draw({ ...CHOICE, baseline: 'drawn' });
    expect(drawn.map((c) => [c.label, c.dash])).toEqual([['R1', false], ['baseline', true]]);
  });
  test('a curve that was not analysed is drawn as it was read', () => {
    const bare = { ...CURVES, smoothed: f(), baseline: f() };
    expect([...draw({ ...CHOICE, baseline: 'subtracted' }, bare)[0]!.y as Float64Array]).toEqual([10, 30, 12]);
  });
  test('each curve is shifted by its own laser', () => {
    const a = positionsOn(CURVES, 'raman-shift');
    const b = positionsOn({ ...CURVES, laserNm: 514.5 }, 'raman-shift');
    expect(b[0]! - a[0]!).toBeGreaterThan(600);
    expect([...positionsOn({ ...CURVES, laserNm: null }, 'raman-shift')].every(Number.isNaN)).toBe(true);
  });
  test('an overlay leaves ink and dash to its place in the list', () => {
    expect(drawnCurves([layer('R1'), layer('R2')], CHOICE, ALONE).curves[1]).not.toHaveProperty('ink');
  });
  test('transmittance and the absorption coefficient are shown of a curve of absorbance, counts stay counts', () => {
    const absorbance = { ...CURVES, yUnit: 'absorbance' as const, smoothed: f(0, 1, 2), baseline: f() };
    const shown = (values: CurveChoice['values'], pathCm?: number) => drawnCurves([layer('R1', absorbance)], { ...CHOICE, values, pathCm }, ALONE);
    expect([...shown('percent-transmittance').curves[0]!.y as Float64Array]).toEqual([100, 10, 1]);
    expect(shown('percent-transmittance').yUnit).toBe('percent-transmittance');
    expect([...shown('absorption-coefficient', 0.5).curves[0]!.y as Float64Array].map((v) => v.toFixed(4))).toEqual(['0.0000', '4.6052', '9.2103']);
    expect(shown('absorption-coefficient').yUnit).toBe('absorbance');
    expect(drawnCurves([layer('R1')], { ...CHOICE, values: 'percent-transmittance' }, ALONE).yUnit).toBe('counts');
  });
  test('the whole goes from the lowest to the highest position of all', () => {
    expect(wholeRange([{ x: f(3, 2, 1) }, { x: f(Number.NaN, 7) }])).toEqual([1, 7]);
    expect(wholeRange([{ x: f(Number.NaN) }])).toBeNull();
  });
});

describe('helpers of the figure', () => {
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

describe('curves over one another', () => {
  const other = layer('R2', { ...CURVES, smoothed: f(22, 56, 26) }, 14);
  const together = (change: Partial<Together>, layers: readonly [Layer, ...Layer[]] = [layer('R1', CURVES, 7), other]) => drawnCurves(layers, CHOICE, { ...ALONE, ...change });
  const values = (drawn: ReturnType<typeof together>) => drawn.curves.map((c) => [...c.y as Float64Array]);
  test('each scaled by itself, and the caption says how', () => {
    expect(values(together({ scale: 'range' }))).toEqual([[0, 1, 2 / 17], [0, 1, 4 / 34]]);
    expect(values(together({ scale: 'diamond-line' }))[1]).toEqual([22 / 14, 4, 26 / 14]);
    expect(together({ scale: 'position', at: 560 }).curves.map((c) => c.y[1])).toEqual([1, 1]);
    expect(together({ scale: 'snv' }).yLabel).toBe('deviations from the mean');
  });
  test('what can not be scaled stays as it is, and is named', () => {
    const drawn = together({ scale: 'diamond-line' }, [layer('R1', CURVES, 7), layer('R2')]);
    expect(values(drawn)[1]).toEqual([11, 28, 13]);
    expect(together({ scale: 'diamond-line', combine: 'ratio' }, [layer('R1', CURVES, 7), layer('R2')]).curves.map((c) => c.label)).toEqual(['R1', 'R2']);
    expect(drawn.remarks).toEqual(['R2 is not scaled. The line it should be scaled by does not stand out in it.']);
    expect(together({ scale: 'position' }).remarks).toEqual(['Write the position at which every curve shall be 1.']);
  });
  test('one curve alone is not scaled', () => expect(values(together({ scale: 'range' }, [layer('R1')]))).toEqual([[11, 28, 13]]));
  test('difference and ratio stand alone, with both names', () => {
    const difference = together({ combine: 'difference' });
    expect([difference.curves.map((c) => c.label), values(difference), difference.yLabel]).toEqual([['R1 − R2'], [[-11, -28, -13]], 'difference, counts']);
    const ratio = together({ combine: 'ratio' });
    expect([values(ratio), ratio.yLabel]).toEqual([[[0.5, 0.5, 0.5]], 'ratio']);
    const far = together({ combine: 'ratio' }, [layer('R1'), layer('R2', { ...CURVES, x: f(700, 720, 740) })]);
    expect([far.curves.length, far.remarks.length]).toEqual([2, 1]);
  });
  test('numbers as shown lie on one axis, and say their unit', () => {
    const drawn = together({});
    const rows = exportedAsShown({ ...drawn, axis: 'nm' });
    expect(rows.ok && rows.value.map((c) => [c.title, c.yUnit, [...c.x]])).toEqual([['R1', 'counts', [540, 560, 580]], ['R2', 'counts', [540, 560, 580]]]);
    const scaled = exportedAsShown({ ...together({ scale: 'maximum' }), axis: 'nm' });
    expect(scaled.ok && [scaled.value[0]!.yUnit, scaled.value[0]!.yUnitText]).toEqual(['other', 'share of the highest point']);
  });
});

import type { FigureCurve } from '../../app/figure/spectrum-figure.ts';
import type { FigureAxis } from '../../app/figure/figure-model.ts';
import { convertPosition } from '../../app/spectra/convert-axis.ts';
import { STATABLE_X_UNITS, type StatableXUnit, type XUnit, type YUnit } from '../../app/spectra/spectrum.ts';
import { normaliseCurve } from './normalise-curve.ts';
import type { Range } from './view-range.ts';

/** Curves of one spectrum as they come through the door, points in rising order of the analysed unit. */
export type LoadedCurves = {
  readonly xUnit: XUnit; readonly yUnit: YUnit; readonly laserNm: number | null;
  readonly x: Float64Array; readonly raw: Float64Array; readonly smoothed: Float64Array; readonly baseline: Float64Array;
};
export type CurveMode = 'raw' | 'processed';
export type BaselineMode = 'hidden' | 'drawn' | 'subtracted';
export type CurveChoice = { readonly axis: FigureAxis; readonly mode: CurveMode; readonly baseline: BaselineMode; readonly normalise: boolean };

export const isLightUnit = (unit: XUnit): unit is StatableXUnit => (STATABLE_X_UNITS as readonly string[]).includes(unit);

/** The ordinate that the switches ask for; the raw one where nothing was processed. */
function ordinateOf(curves: LoadedCurves, choice: CurveChoice): Float64Array {
  const y = choice.mode === 'processed' && curves.smoothed.length === curves.x.length ? curves.smoothed : curves.raw;
  const { baseline } = curves;
  return choice.baseline === 'subtracted' && baseline.length === y.length ? y.map((value, i) => value - baseline[i]!) : y;
}

/** Positions on the chosen axis, each curve with the laser it was recorded with; NaN where there is none. */
export function positionsOn(curves: LoadedCurves, axis: FigureAxis): Float64Array {
  const { xUnit, laserNm } = curves;
  if (!isLightUnit(xUnit)) return new Float64Array(curves.x.length).fill(Number.NaN);
  if (xUnit === axis) return curves.x;
  return curves.x.map((at) => convertPosition(at, xUnit, axis, laserNm === null ? {} : { laserNm }));
}

/** What the figure draws for the spectrum in question: the curve, and its baseline where that is asked for. */
export function mainCurves(curves: LoadedCurves, label: string, choice: CurveChoice): FigureCurve[] {
  const x = positionsOn(curves, choice.axis);
  const y = ordinateOf(curves, choice);
  const main: FigureCurve = { label, x, y: choice.normalise ? normaliseCurve(y) : y, xUnit: choice.axis, ink: 'ink', dash: false };
  if (choice.baseline !== 'drawn' || curves.baseline.length !== x.length || choice.normalise) return [main];
  return [main, { label: 'baseline', x, y: curves.baseline, xUnit: choice.axis, ink: 'ink3', dash: true }];
}

/** A curve laid over: stroke and dash are chosen by its place in the list. */
export function overlayCurve(curves: LoadedCurves, label: string, choice: CurveChoice): FigureCurve {
  const y = ordinateOf(curves, choice);
  return { label, x: positionsOn(curves, choice.axis), y: choice.normalise ? normaliseCurve(y) : y, xUnit: choice.axis };
}

/** From the lowest to the highest position of all curves; null where no curve has one. */
export function wholeRange(curves: readonly Pick<FigureCurve, 'x'>[]): Range | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { x } of curves) {
    for (let i = 0; i < x.length; i++) {
      const at = x[i]!;
      if (!Number.isFinite(at)) continue;
      if (at < low) low = at;
      if (at > high) high = at;
    }
  }
  return low < high ? [low, high] : null;
}

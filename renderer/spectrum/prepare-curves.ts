import type { FigureCurve } from '../../app/figure/spectrum-figure.ts';
import type { FigureAxis } from '../../app/figure/figure-model.ts';
import { convertPosition } from '../../app/spectra/convert-axis.ts';
import { convertOrdinates } from '../../app/spectra/convert-ordinate.ts';
import { STATABLE_X_UNITS, type StatableXUnit, type XUnit, type YUnit } from '../../app/spectra/spectrum.ts';
import type { Range } from './view-range.ts';

/** Curves of one spectrum as they come through the door, points in rising order of the analysed unit. */
export type LoadedCurves = {
  readonly xUnit: XUnit; readonly yUnit: YUnit; readonly laserNm: number | null;
  readonly x: Float64Array; readonly raw: Float64Array; readonly smoothed: Float64Array; readonly baseline: Float64Array;
};
/** A curve before it is scaled or combined: stroke and dash are chosen by its place in the drawing. */
export type PlainCurve = { readonly label: string; readonly x: Float64Array; readonly y: Float64Array; readonly xUnit: FigureAxis };
export type CurveMode = 'raw' | 'processed';
export type BaselineMode = 'hidden' | 'drawn' | 'subtracted';
/** In what unit values are shown; null as the analysis holds them. */
export type CurveChoice = { readonly axis: FigureAxis; readonly mode: CurveMode; readonly baseline: BaselineMode; readonly values: YUnit | null; readonly pathCm: number | undefined };

export const isLightUnit = (unit: XUnit): unit is StatableXUnit => (STATABLE_X_UNITS as readonly string[]).includes(unit);

/** Values in the unit that is asked for; as they are where they can't be turned into it. */
function inUnit(y: Float64Array, { yUnit }: LoadedCurves, { values, pathCm }: CurveChoice): Float64Array {
  if (values === null) return y;
  const converted = convertOrdinates(y, yUnit, values, pathCm);
  return converted.ok ? converted.value : y;
}

/** The unit in which the values of a curve are shown. */
export function shownUnit({ yUnit }: Pick<LoadedCurves, 'yUnit'>, { values, pathCm }: Pick<CurveChoice, 'values' | 'pathCm'>): YUnit {
  return values !== null && convertOrdinates(new Float64Array(0), yUnit, values, pathCm).ok ? values : yUnit;
}

/** The ordinate that the switches ask for; the raw one where nothing was processed. */
function ordinateOf(curves: LoadedCurves, choice: CurveChoice): Float64Array {
  const y = choice.mode === 'processed' && curves.smoothed.length === curves.x.length ? curves.smoothed : curves.raw;
  const { baseline } = curves;
  return inUnit(choice.baseline === 'subtracted' && baseline.length === y.length ? y.map((value, i) => value - baseline[i]!) : y, curves, choice);
}

/** Positions on the chosen axis, each curve with the laser it was recorded with; NaN where there is none. */
export function positionsOn(curves: LoadedCurves, axis: FigureAxis): Float64Array {
  const { xUnit, laserNm } = curves;
  if (!isLightUnit(xUnit)) return new Float64Array(curves.x.length).fill(Number.NaN);
  if (xUnit === axis) return curves.x;
  return curves.x.map((at) => convertPosition(at, xUnit, axis, laserNm === null ? {} : { laserNm }));
}

/** A curve on the chosen axis, in the chosen unit. */
export const curveOn = (curves: LoadedCurves, label: string, choice: CurveChoice): PlainCurve => ({ label, x: positionsOn(curves, choice.axis), y: ordinateOf(curves, choice), xUnit: choice.axis });

/** The baseline as a dashed curve of its own; null where it is not to be drawn. */
export function baselineOn(curves: LoadedCurves, choice: CurveChoice): FigureCurve | null {
  if (choice.baseline !== 'drawn' || curves.baseline.length !== curves.x.length) return null;
  return { label: 'baseline', x: positionsOn(curves, choice.axis), y: inUnit(curves.baseline, curves, choice), xUnit: choice.axis, ink: 'ink3', dash: true };
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

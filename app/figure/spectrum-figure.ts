import type { DiamondRamanResult, PeakResult } from '../spectra/analysis.ts';
import { convertPosition } from '../spectra/convert-axis.ts';
import type { StatableXUnit, YUnit } from '../spectra/spectrum.ts';
import { centreLabel as tableLabel } from './centre-label.ts';
import type { CentreLabelOf } from './centre-label.ts';
import { decimate } from './decimate.ts';
import { AXIS_STYLE, ORDINATE_LABELS } from './figure-axes.ts';
import { FIGURE_STYLE } from './figure-style.ts';
import { figureLines } from './figure-lines.ts';
import type { ReferenceLine } from './figure-lines.ts';
import type { FigureAxis, FigureModel, Ink } from './figure-model.ts';
import { niceRange } from './nice-ticks.ts';

/** A curve to draw: x monotone, in its own unit; y of the same length. */
export type FigureCurve = { readonly label: string; readonly x: ArrayLike<number>; readonly y: ArrayLike<number>; readonly xUnit: StatableXUnit; readonly ink?: Ink; readonly dash?: boolean };

export type SpectrumFigureInput = {
  readonly curves: readonly FigureCurve[];
  readonly axis: FigureAxis;
  /** Calibrated laser wavelength in air, nm: needed for the Raman-shift axis of a curve in another unit. */
  readonly laserNm?: number;
  readonly yUnit: YUnit;
  readonly peaks?: readonly PeakResult[];
  readonly diamondRaman?: DiamondRamanResult | null;
  /** Reference positions beside what was found. */
  readonly lines?: readonly ReferenceLine[];
  /** Part of the axis to show, in its unit, in either order. */
  readonly xRange?: readonly [number, number];
  readonly centreLabel?: CentreLabelOf;
  /** Columns the curves are thinned to, at most two points each. */
  readonly columns?: number;
};

/** Enough for the widest screen; keeps a stored figure small. */
export const FIGURE_COLUMNS = 1600;
/** Share of the height left above the highest point. */
const HEADROOM = 0.04;
/** Ordinate starts at zero when the lowest point is below this share of the highest. */
const ZERO_BELOW = 0.5;
const ORDINATE_TICKS = 5;

type CurveStroke = { readonly ink: Ink; readonly dash: boolean; readonly pattern?: number };
const STROKES_OF_INK: readonly Omit<CurveStroke, 'ink'>[] = [{ dash: false }, ...FIGURE_STYLE.patterns.map((_, pattern) => ({ dash: true, pattern }))];
/** Strokes for several curves: ink and dash alone, because colours mean an origin. The two inks furthest apart come first, in every stroke. */
export const CURVE_STROKES: readonly CurveStroke[] = [
  ...STROKES_OF_INK.flatMap((stroke) => [{ ink: 'ink' as const, ...stroke }, { ink: 'ink3' as const, ...stroke }]),
  ...STROKES_OF_INK.map((stroke) => ({ ink: 'ink2' as const, ...stroke })),
];

type Converted = { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> };

/** The curve on the figure's axis; NaN where the axis has no place for a point. */
function convert(curve: FigureCurve, axis: FigureAxis, laserNm: number | undefined): Converted {
  if (curve.xUnit === axis) return curve;
  const options = laserNm === undefined ? {} : { laserNm };
  const x = new Float64Array(curve.x.length);
  for (let i = 0; i < x.length; i++) x[i] = convertPosition(curve.x[i]!, curve.xUnit, axis, options);
  return { x, y: curve.y };
}

/** Lowest and highest of a list of ranges; 0 to 1 where there is none. */
function union(ranges: readonly (readonly [number, number])[]): [number, number] {
  const low = Math.min(...ranges.map((range) => range[0]));
  const high = Math.max(...ranges.map((range) => range[1]));
  return low <= high ? [low, high] : [0, 1];
}

/** Lowest and highest finite value; where `x` is given, only of points with x between `from` and `to`. Upside down where there is none. */
function extent(values: ArrayLike<number>, x?: ArrayLike<number>, from = 0, to = 0): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    if (x !== undefined && !(x[i]! >= from && x[i]! <= to)) continue;
    const value = values[i]!;
    if (!Number.isFinite(value)) continue;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}

/** An empty range cannot be drawn: a single value gets room on both sides. */
const opened = ([low, high]: [number, number]): [number, number] => (low < high ? [low, high] : [low - (Math.abs(low) || 1) / 2, high + (Math.abs(high) || 1) / 2]);

function ordinateRange(low: number, high: number): [number, number] {
  const bottom = low >= 0 && low < ZERO_BELOW * high ? 0 : low;
  const [from, to] = opened([bottom, high]);
  const room = HEADROOM * (to - from);
  return niceRange(bottom === 0 ? 0 : from - room, to + room, ORDINATE_TICKS);
}

/** Rounds to a millionth of the range: a stored figure stays small and no eye sees the difference. */
function compact(values: readonly number[], [from, to]: readonly [number, number]): number[] {
  const scale = 10 ** Math.ceil(6 - Math.log10(Math.abs(to - from)));
  return Number.isFinite(scale) && scale > 0 ? values.map((v) => Math.round(v * scale) / scale) : [...values];
}

/**
 * The figure of one spectrum or several on one axis. Points that the axis cannot show (no laser for a Raman shift, no light)
 * are left out; a curve without any stays in the list with no points. Ordinate from what lies inside the shown part.
 */
export function spectrumFigure(input: SpectrumFigureInput): FigureModel {
  const { axis } = input;
  const converted = input.curves.map((curve) => convert(curve, axis, input.laserNm));
  const whole = input.xRange === undefined ? union(converted.map((curve) => extent(curve.x))) : [Math.min(...input.xRange), Math.max(...input.xRange)] as [number, number];
  const [low, high] = opened(whole);
  const xRange: [number, number] = AXIS_STYLE[axis].falling ? [high, low] : [low, high];
  const yRange = ordinateRange(...union(converted.map((curve) => extent(curve.y, curve.x, low, high))));
  return {
    xUnit: axis,
    xLabel: AXIS_STYLE[axis].label,
    yLabel: ORDINATE_LABELS[input.yUnit],
    xRange,
    yRange,
    curves: converted.flatMap((curve, c) => {
      const given = input.curves[c]!;
      const stroke = CURVE_STROKES[c % CURVE_STROKES.length]!;
      const pieces = decimate(curve.x, curve.y, low, high, input.columns ?? FIGURE_COLUMNS);
      const style = { label: given.label, ink: given.ink ?? stroke.ink, ...(given.dash === undefined ? { dash: stroke.dash, ...(stroke.pattern ? { pattern: stroke.pattern } : {}) } : { dash: given.dash }) };
      if (pieces.length === 0) return [{ ...style, x: [], y: [] }];
      // A gap divides a curve into pieces; only the first carries the name.
      return pieces.map((piece, p) => ({ ...style, label: p === 0 ? given.label : '', x: compact(piece.x, xRange), y: compact(piece.y, yRange) }));
    }),
    lines: figureLines({ ...input, centreLabel: input.centreLabel ?? tableLabel }, xRange),
    visibleStrip: AXIS_STYLE[axis].unit === 'nm',
  };
}

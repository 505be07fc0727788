import { pchip } from './pchip.ts';
import type { RisingPoints } from './rising-points.ts';

/**
 * linear: on the straight between neighbours; a narrow line between coarse points loses height.
 * cubic: monotone cubic; keeps every given point and never overshoots. For a grid as fine as the curve's or finer.
 * area: mean over the cell that reaches half-way to the neighbouring points; keeps the area under the curve and averages its noise. For a coarser grid.
 */
export const RESAMPLINGS = ['linear', 'cubic', 'area'] as const;
export type Resampling = (typeof RESAMPLINGS)[number];

/** Last index whose x is at or below `at`, at most the last but one. */
function segmentOf(x: ArrayLike<number>, at: number): number {
  let lo = 0;
  let hi = x.length - 1;
  while (hi - lo > 1) {
    const mid = (lo + hi) >> 1;
    if (x[mid]! <= at) lo = mid;
    else hi = mid;
  }
  return lo;
}

function linear({ x, y }: RisingPoints): (at: number) => number {
  return (at) => {
    const i = segmentOf(x, at);
    const share = (at - x[i]!) / (x[i + 1]! - x[i]!);
    return (1 - share) * y[i]! + share * y[i + 1]!;
  };
}

/** Area under the straight-line curve from its first point to a position inside it. */
function areaUpTo({ x, y }: RisingPoints): (at: number) => number {
  const whole = new Float64Array(x.length);
  for (let i = 1; i < x.length; i++) whole[i] = whole[i - 1]! + 0.5 * (x[i]! - x[i - 1]!) * (y[i]! + y[i - 1]!);
  return (at) => {
    const i = segmentOf(x, at);
    const width = at - x[i]!;
    const slope = (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
    return whole[i]! + width * (y[i]! + 0.5 * slope * width);
  };
}

/** Mean over each cell; cells are cut off at the ends of the curve. */
function cellMeans(points: RisingPoints, onto: ArrayLike<number>, first: number, last: number): (i: number) => number {
  const area = areaUpTo(points);
  const n = onto.length;
  const inside = (value: number): number => Math.max(first, Math.min(last, value));
  return (i) => {
    const at = onto[i]!;
    const before = i > 0 ? 0.5 * (onto[i - 1]! + at) : at - 0.5 * (onto[1]! - at);
    const after = i < n - 1 ? 0.5 * (at + onto[i + 1]!) : at + 0.5 * (at - onto[n - 2]!);
    const from = inside(Math.min(before, after));
    const to = inside(Math.max(before, after));
    return (area(to) - area(from)) / (to - from);
  };
}

/**
 * Values of a curve at other positions of the same axis, one for each; NaN outside the curve, because nothing was measured there.
 * @param points at least 2, x strictly rising
 * @param onto positions, rising or falling; 'area' needs at least 2
 */
export function resample(points: RisingPoints, onto: ArrayLike<number>, how: Resampling): Float64Array {
  const first = points.x[0]!;
  const last = points.x[points.x.length - 1]!;
  const valueAt = how === 'area' ? cellMeans(points, onto, first, last) : null;
  const curveAt = how === 'cubic' ? pchip(points.x, points.y) : linear(points);
  return Float64Array.from({ length: onto.length }, (_, i) => {
    const at = onto[i]!;
    if (!(at >= first && at <= last)) return Number.NaN;
    return valueAt === null ? curveAt(at) : valueAt(i);
  });
}

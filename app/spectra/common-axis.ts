import { err, ok, type Result } from '../result.ts';
import { resample } from './resample.ts';
import { risingPoints, type RisingPoints } from './rising-points.ts';

/** A grid whose points lie this many times as far apart as the curve's averages it; a finer one reads between its points (judgement). */
const COARSER = 1.5;
const LEAST_POINTS = 2;

export type CommonAxisError = { readonly code: 'no-common-range'; readonly message: string };
/** Curves on one rising axis, in the order they were given. */
export type CommonAxis = { readonly x: Float64Array; readonly ys: readonly Float64Array[] };

const within = ({ x }: RisingPoints, from: number, to: number): Float64Array => x.filter((at) => at >= from && at <= to);
const sameGrid = (a: Float64Array, b: Float64Array): boolean => a.length === b.length && a.every((at, i) => at === b[i]);

/**
 * Brings curves of one axis and unit onto the points of the coarsest of them, over the range that all of them cover. Finer curves are
 * averaged over each point's cell, so that their area stays; others are read between their points by monotone cubics.
 * Positions and values that are not finite are left out first. Errors: 'no-common-range'.
 */
export function onCommonAxis(curves: readonly { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> }[]): Result<CommonAxis, CommonAxisError> {
  const rising = curves.map((curve) => risingPoints(curve.x, curve.y));
  const from = Math.max(...rising.map(({ x }) => x[0] ?? Infinity));
  const to = Math.min(...rising.map(({ x }) => x[x.length - 1] ?? -Infinity));
  const grids = rising.map((points) => within(points, from, to));
  const x = grids.reduce((coarsest, grid) => (grid.length < coarsest.length ? grid : coarsest), grids[0] ?? new Float64Array(0));
  if (x.length < LEAST_POINTS) {
    return err({ code: 'no-common-range', message: 'The curves have no range in common: choose curves that cover the same part of the axis.' });
  }
  const ys = rising.map((points, i) => (sameGrid(grids[i]!, x) ? points.y.filter((_, k) => points.x[k]! >= from && points.x[k]! <= to)
    : resample(points, x, grids[i]!.length >= COARSER * x.length ? 'area' : 'cubic')));
  return ok({ x, ys });
}

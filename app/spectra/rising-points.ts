/** Points of a curve, x strictly rising, both finite. */
export type RisingPoints = { readonly x: Float64Array; readonly y: Float64Array };

/**
 * The points of a curve in rising order: those without a position or a value are left out, and of points that share a position
 * the first in that order stays. x in any order, same length as y.
 */
export function risingPoints(x: ArrayLike<number>, y: ArrayLike<number>): RisingPoints {
  const order = Array.from(x, (_, i) => i).filter((i) => Number.isFinite(x[i]!) && Number.isFinite(y[i]!)).sort((a, b) => x[a]! - x[b]!);
  const kept = order.filter((i, k) => k === 0 || x[i]! > x[order[k - 1]!]!);
  return { x: Float64Array.from(kept, (i) => x[i]!), y: Float64Array.from(kept, (i) => y[i]!) };
}

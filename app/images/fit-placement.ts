import type { Placement } from './placement.ts';
import { placer } from './placement.ts';

/** A place of the first grid and where it was found on the second, cells. */
export type Displacement = { readonly x: number; readonly y: number; readonly toX: number; readonly toY: number; readonly weight: number };

export type PlacementFit = {
  readonly placement: Placement;
  /** Root mean square of what is left of those that agree, cells. */
  readonly residual: number;
  readonly agreeing: number; readonly compared: number;
};

/** Rounds in which outliers lose their weight; the weights stand still long before. */
const ROUNDS = 12;

/** Shift, turn and size by weighted least squares, closed form (Umeyama 1991 in two dimensions). */
function solve(seen: readonly Displacement[], weights: Float64Array, width: number, height: number): Placement | null {
  const [cx, cy] = [0.5 * (width - 1), 0.5 * (height - 1)];
  let [sum, mx, my, nx, ny] = [0, 0, 0, 0, 0];
  seen.forEach((d, i) => { const w = weights[i]!; sum += w; mx += w * d.x; my += w * d.y; nx += w * d.toX; ny += w * d.toY; });
  if (!(sum > 0)) return null;
  mx /= sum; my /= sum; nx /= sum; ny /= sum;
  let [along, across, spread] = [0, 0, 0];
  seen.forEach((d, i) => {
    const w = weights[i]!;
    const [ax, ay, bx, by] = [d.x - mx, d.y - my, d.toX - nx, d.toY - ny];
    along += w * (ax * bx + ay * by); across += w * (ax * by - ay * bx); spread += w * (ax * ax + ay * ay);
  });
  if (!(spread > 0)) return null;
  const [c, s] = [along / spread, across / spread];
  return {
    dx: nx - cx - (c * (mx - cx) - s * (my - cy)), dy: ny - cy - (s * (mx - cx) + c * (my - cy)),
    degrees: Math.atan2(s, c) * 180 / Math.PI, scale: Math.sqrt(c * c + s * s),
  };
}

/**
 * The placement that most displacements agree on: least squares with weights that fall to zero beyond a width (Tukey), which
 * narrows from round to round down to `within` cells.
 * @param start where no fit is possible, this stays
 */
export function fitPlacement(seen: readonly Displacement[], width: number, height: number, within: number, start: Placement): PlacementFit {
  let fitted = start;
  let reach = 0.05 * Math.max(width, height);
  let left = new Float64Array(seen.length);
  for (let round = 0; round < ROUNDS; round++) {
    const place = placer(fitted, width, height);
    left = Float64Array.from(seen, (d) => { const [x, y] = place(d.x, d.y); return Math.hypot(d.toX - x, d.toY - y); });
    const weights = Float64Array.from(seen, (d, i) => (left[i]! < reach ? d.weight * (1 - (left[i]! / reach) ** 2) ** 2 : 0));
    fitted = solve(seen, weights, width, height) ?? fitted;
    reach = Math.max(2 * within, 0.6 * reach);
  }
  const place = placer(fitted, width, height);
  const near = seen.map((d) => { const [x, y] = place(d.x, d.y); return Math.hypot(d.toX - x, d.toY - y); }).filter((rest) => rest < within);
  const residual = near.length === 0 ? Infinity : Math.sqrt(near.reduce((sum, rest) => sum + rest * rest, 0) / near.length);
  return { placement: fitted, residual, agreeing: near.length, compared: seen.length };
}

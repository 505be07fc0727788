export type Polyline = { readonly x: number[]; readonly y: number[] };

/**
 * A curve with at most two points for each drawn column: its lowest and its highest, in their order along x, so that no
 * extreme is lost. x monotone (either way), in the unit of `from` and `to`, which are the ends of the drawn axis in either
 * order. Points outside stay only as the nearest neighbour on each side. Points with a coordinate that is not finite end a piece:
 * the result is a list of pieces. With several pieces a column that a gap divides can keep more than two points.
 */
export function decimate(x: ArrayLike<number>, y: ArrayLike<number>, from: number, to: number, columns: number): Polyline[] {
  const low = Math.min(from, to);
  const width = Math.max(from, to) - low;
  const pieces: Polyline[] = [];
  let start = 0;
  const count = Math.min(x.length, y.length);
  for (let i = 0; i <= count; i++) {
    if (i < count && Number.isFinite(x[i]) && Number.isFinite(y[i])) continue;
    if (i > start) {
      const piece = decimatePiece(x, y, start, i, low, width, columns);
      if (piece.x.length > 0) pieces.push(piece);
    }
    start = i + 1;
  }
  return pieces;
}

function decimatePiece(x: ArrayLike<number>, y: ArrayLike<number>, start: number, end: number, low: number, width: number, columns: number): Polyline {
  const out: Polyline = { x: [], y: [] };
  const scale = columns / width;
  let column = Number.NaN;
  let lowest = -1;
  let highest = -1;
  const flush = (): void => {
    if (lowest < 0) return;
    const first = Math.min(lowest, highest);
    const second = Math.max(lowest, highest);
    out.x.push(x[first]!);
    out.y.push(y[first]!);
    if (second !== first) {
      out.x.push(x[second]!);
      out.y.push(y[second]!);
    }
    lowest = -1;
  };
  let before = -1; // last point outside before the first inside
  let after = -1; // first point outside after the last inside
  for (let i = start; i < end; i++) {
    const at = (x[i]! - low) * scale;
    if (!(at >= 0 && at <= columns)) {
      if (out.x.length === 0 && lowest < 0) before = i;
      else if (after < 0) after = i;
      continue;
    }
    if (before >= 0) {
      out.x.push(x[before]!);
      out.y.push(y[before]!);
      before = -1;
    }
    const here = Math.min(columns - 1, Math.floor(at));
    if (here !== column) {
      flush();
      column = here;
    }
    if (lowest < 0) lowest = highest = i;
    else if (y[i]! < y[lowest]!) lowest = i;
    else if (y[i]! > y[highest]!) highest = i;
  }
  flush();
  if (after >= 0) {
    out.x.push(x[after]!);
    out.y.push(y[after]!);
  }
  return out;
}

export type RawPeak = {
  /** Point of the maximum. */
  readonly index: number;
  /** Height over zero of the curve that was searched. */
  readonly height: number;
  /** Height over the higher of the two valleys that part the peak from anything higher. */
  readonly prominence: number;
  /** Points, fractional, where the curve falls to half the prominence. */
  readonly leftHalf: number;
  readonly rightHalf: number;
  /** Points of the two valleys. */
  readonly leftValley: number;
  readonly rightValley: number;
};

/** Lowest point between each point and the nearest higher one on one side, by a stack: linear time. */
function valleys(y: Float64Array, forward: boolean): Int32Array {
  const n = y.length;
  const out = new Int32Array(n);
  const stack = new Int32Array(n);
  const lowest = new Int32Array(n);
  let top = 0;
  for (let k = 0; k < n; k++) {
    const i = forward ? k : n - 1 - k;
    let low = i;
    while (top > 0 && y[stack[top - 1]!]! <= y[i]!) {
      top--;
      if (y[lowest[top]!]! < y[low]!) low = lowest[top]!;
    }
    out[i] = low;
    stack[top] = i;
    lowest[top] = low;
    top++;
  }
  return out;
}

function halfCrossing(y: Float64Array, index: number, valley: number, level: number, step: 1 | -1): number {
  let i = index;
  while (i !== valley && y[i]! > level) i += step;
  const inner = y[i - step]!;
  const outer = y[i]!;
  return outer >= level || inner === outer ? i : i - step * ((level - outer) / (inner - outer));
}

/**
 * Local maxima of y whose prominence reaches `threshold` (one value per point, y's unit) and whose height over zero reaches `floor`.
 * Linear time. Flat tops count once, at their middle.
 */
export function findPeaks(y: Float64Array, threshold: Float64Array, floor: Float64Array): RawPeak[] {
  const n = y.length;
  const left = valleys(y, true);
  const right = valleys(y, false);
  const found: RawPeak[] = [];
  for (let i = 1; i < n - 1; i++) {
    if (!(y[i]! > y[i - 1]!)) continue;
    let end = i;
    while (end < n - 1 && y[end + 1] === y[i]) end++;
    if (end === n - 1 || y[end + 1]! > y[i]!) { i = end; continue; }
    const index = (i + end) >> 1;
    const leftValley = left[i]!;
    const rightValley = right[end]!;
    const prominence = y[index]! - Math.max(y[leftValley]!, y[rightValley]!);
    if (prominence >= threshold[index]! && y[index]! >= floor[index]!) {
      const level = y[index]! - prominence / 2;
      found.push({
        index, height: y[index]!, prominence, leftValley, rightValley,
        leftHalf: halfCrossing(y, index, leftValley, level, -1), rightHalf: halfCrossing(y, index, rightValley, level, 1),
      });
    }
    i = end;
  }
  return found;
}

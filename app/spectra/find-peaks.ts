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

export type PeakThresholds = {
  /** Least prominence and least height over zero, in multiples of the noise at the maximum. */
  readonly prominence: number;
  readonly height: number;
};

/** Maxima, flat tops at their middle, between the curve's two ends, which stand for anything higher outside; and the lowest point before each. */
type Maxima = { readonly count: number; readonly at: Int32Array; readonly before: Int32Array };

function maximaOf(y: Float64Array): Maxima {
  const n = y.length;
  const at = new Int32Array((n >> 1) + 2);
  const before = new Int32Array((n >> 1) + 2);
  let count = 1;
  let low = 0;
  for (let i = 1; i < n - 1; i++) {
    const value = y[i]!;
    if (value < y[low]!) low = i;
    if (!(value > y[i - 1]!) || y[i + 1]! > value) continue;
    let end = i;
    while (end < n - 1 && y[end + 1] === value) end++;
    if (end < n - 1 && y[end + 1]! < value) {
      at[count] = (i + end) >> 1;
      before[count++] = low;
      low = end;
    }
    i = end;
  }
  at[count] = n - 1;
  before[count++] = y[n - 1]! < y[low]! ? n - 1 : low;
  return { count, at, before };
}

/** Lowest point between each maximum and the nearest higher one on one side, by a stack: linear time. */
function valleys(y: Float64Array, { count, at, before }: Maxima, forward: boolean): Int32Array {
  const out = new Int32Array(count);
  const stack = new Int32Array(count);
  let top = 0;
  for (let j = 0; j < count; j++) {
    const k = forward ? j : count - 1 - j;
    const value = y[at[k]!]!;
    let low = forward ? before[k]! : k === count - 1 ? at[k]! : before[k + 1]!;
    while (top > 0 && y[at[stack[top - 1]!]!]! <= value) {
      const other = out[stack[--top]!]!;
      if (y[other]! < y[low]!) low = other;
    }
    out[k] = low;
    stack[top++] = k;
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
 * Local maxima of y whose prominence and height over zero reach the thresholds times the noise there (one value per point, y's unit).
 * Linear time. Flat tops count once, at their middle; the ends never.
 */
export function findPeaks(y: Float64Array, noise: Float64Array, { prominence: leastProminence, height: leastHeight }: PeakThresholds): RawPeak[] {
  const maxima = maximaOf(y);
  const left = valleys(y, maxima, true);
  const right = valleys(y, maxima, false);
  const found: RawPeak[] = [];
  for (let k = 1; k < maxima.count - 1; k++) {
    const index = maxima.at[k]!;
    const height = y[index]!;
    if (!(height >= leastHeight * noise[index]!)) continue;
    const leftValley = left[k]!;
    const rightValley = right[k]!;
    const prominence = height - Math.max(y[leftValley]!, y[rightValley]!);
    if (!(prominence >= leastProminence * noise[index]!)) continue;
    const level = height - prominence / 2;
    found.push({
      index, height, prominence, leftValley, rightValley,
      leftHalf: halfCrossing(y, index, leftValley, level, -1), rightHalf: halfCrossing(y, index, rightValley, level, 1),
    });
  }
  return found;
}

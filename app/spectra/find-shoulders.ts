import { savitzkyGolayWeights } from './savitzky-golay.ts';
import { medianInPlace } from './statistics.ts';

/** Where the curve bends like the top of a line, beside lines that are known. */
export type Shoulder = { readonly index: number; /** Height that the bend alone suggests. */ readonly height: number };

export type ShoulderSearch = {
  readonly y: Float64Array;
  /** Noise of y around, one standard deviation; noise measured in the range itself counts where it is larger. */
  readonly noise: number;
  readonly from: number;
  readonly to: number;
  /** Points of the known tops, ascending. */
  readonly tops: readonly number[];
  /** Width of the lines there, points. */
  readonly fwhmPoints: number;
};

/** The bend must stand this far out of its own noise, and over the dip that parts it from each top; a fit decides afterwards. */
const LEAST_SIGMAS = 4.5;
const LEAST_DIP_SIGMAS = 4.5;
/** The dip goes down at least to this share of the bend. */
const DEEPEST_SHARE = 0.5;
/** The derivative is taken over this share of a line's width: less and noise rules, more and close lines merge. */
const DERIVATIVE_WIDTHS = 0.65;
const LEAST_WIDTH = 5;
const MOST_WIDTH = 51;
const BEND_OF_GAUSSIAN = 8 * Math.LN2;

const kernels = new Map<number, { readonly weights: Float64Array; readonly gain: number }>();

function kernelOf(width: number) {
  const known = kernels.get(width);
  if (known) return known;
  const weights = savitzkyGolayWeights(width, 2, 2);
  const made = { weights, gain: Math.hypot(...weights) };
  kernels.set(width, made);
  return made;
}

/** Standard deviation of normal noise from the median of absolute third differences: 1.4826 / sqrt(1 + 9 + 9 + 1). */
const THIRD_TO_SIGMA = 1.482602218505602 / Math.sqrt(20);

/** Noise in a range of the curve; third differences take out level, slope and bend of a line that many points make. */
function noiseWithin(y: Float64Array, from: number, to: number): number {
  const count = to - from - 2;
  if (count < 8) return 0;
  const third = new Float64Array(count);
  for (let k = 0; k < count; k++) third[k] = Math.abs(y[from + k + 3]! - 3 * y[from + k + 2]! + 3 * y[from + k + 1]! - y[from + k]!);
  return THIRD_TO_SIGMA * medianInPlace(third);
}

/** Negative second derivative per point², from..to inclusive; zero where the window leaves the curve. */
function bends(y: Float64Array, from: number, to: number, weights: Float64Array): Float64Array {
  const half = (weights.length - 1) / 2;
  const out = new Float64Array(to - from + 1);
  for (let i = Math.max(from, half); i <= Math.min(to, y.length - 1 - half); i++) {
    let sum = 0;
    for (let j = 0; j < weights.length; j++) sum -= weights[j]! * y[i - half + j]!;
    out[i - from] = sum;
  }
  return out;
}

/**
 * Lines on the flank of stronger ones that make no maximum of their own: a lobe of the second derivative that a dip parts from every known top.
 * A single line of any usual shape has none. Strongest first.
 */
export function findShoulders({ y, noise, from, to, tops, fwhmPoints }: ShoulderSearch): Shoulder[] {
  const width = Math.max(LEAST_WIDTH, Math.min(MOST_WIDTH, 2 * Math.round(0.5 * DERIVATIVE_WIDTHS * fwhmPoints) + 1));
  const { weights, gain } = kernelOf(width);
  const bend = bends(y, from, to, weights);
  const sigma = gain * Math.max(noise, noiseWithin(y, from, to));
  const found: Shoulder[] = [];
  for (let k = 1; k < bend.length - 1; k++) {
    const value = bend[k]!;
    if (value < LEAST_SIGMAS * sigma || value < bend[k - 1]! || value <= bend[k + 1]!) continue;
    const dip = (towards: number): number => {
      let least = value;
      for (let i = k; i !== towards - from; i += towards - from > k ? 1 : -1) least = Math.min(least, bend[i] ?? least);
      return least;
    };
    if (tops.some((top) => { const least = dip(top); return least > DEEPEST_SHARE * value || value - least < LEAST_DIP_SIGMAS * sigma; })) continue;
    found.push({ index: from + k, height: (value * fwhmPoints * fwhmPoints) / BEND_OF_GAUSSIAN });
  }
  return found.sort((a, b) => b.height - a.height);
}

import { medianInPlace } from './statistics.ts';

export type SpikeOptions = {
  /** Instrument resolution (full width at half maximum) in points; unknown counts as 2. */
  readonly resolutionPoints?: number;
  readonly sigmas: number;
};
/** Standard deviations: fewer where the instrument spreads a line over enough points to know its shape. */
export const SPIKE_DEFAULTS = { sigmas: 8 } as const;
const SIGMAS_WELL_SAMPLED = 5.5;
/** Resolution in points from which a line's shape is known, and the share of the height that the neighbours of a spike stay below. */
const WELL_SAMPLED_POINTS = 2.5;
const SHOULDER = { wellSampled: 0.4, coarse: 0.2 } as const;
/** Cosmic rays fill one to three pixels (common practice, no source). */
const LONGEST_SPIKE = 3;
/** The level around a spike is the median over this many resolutions to each side, so that a line's own top does not set it. */
const HALF_WINDOW_RESOLUTIONS = 2;
const LEAST_HALF_WINDOW = 4;
const MOST_HALF_WINDOW = 40;

export type Despiked = { readonly y: Float64Array; /** Middle point of each spike taken out. */ readonly spikes: readonly number[] };

/** Whether the curve falls to `level` within `longest` points on both sides of i: what every spike does, and few tops of lines do. */
function fallsBeside(y: Float64Array, i: number, longest: number, level: number): boolean {
  let left = false;
  let right = false;
  for (let j = 1; j <= longest; j++) {
    if (i - j < 0 || y[i - j]! <= level) left = true;
    if (i + j >= y.length || y[i + j]! <= level) right = true;
  }
  return left && right;
}

/**
 * Takes out lines that are too narrow for the instrument to have made: at most half its resolution wide at half height.
 * y and noise have one length; the result is a copy with straight bridges in place of the spikes.
 */
export function removeSpikes(y: Float64Array, noise: Float64Array, options: SpikeOptions = SPIKE_DEFAULTS): Despiked {
  const n = y.length;
  const resolution = options.resolutionPoints ?? 2;
  const wellSampled = resolution >= WELL_SAMPLED_POINTS;
  const sigmas = wellSampled ? Math.min(options.sigmas, SIGMAS_WELL_SAMPLED) : options.sigmas;
  const longest = Math.max(1, Math.min(LONGEST_SPIKE, Math.floor(resolution / 2)));
  const spikes: number[] = [];
  let out = y;
  const share = wellSampled ? SHOULDER.wellSampled : SHOULDER.coarse;
  const half = Math.max(LEAST_HALF_WINDOW, Math.min(MOST_HALF_WINDOW, Math.round(HALF_WINDOW_RESOLUTIONS * resolution)));
  const window = new Float64Array(2 * half + 1);
  for (let i = 1; i < n - 1; i++) {
    const value = y[i]!;
    // A spike is a local maximum that stands far above a neighbour two or three points off; cheap tests first.
    if (value < y[i - 1]! || value <= y[i + 1]!) continue;
    const drop = sigmas * noise[i]!;
    if (value - Math.min(y[Math.max(0, i - longest - 1)]!, y[Math.min(n - 1, i + longest + 1)]!) < drop) continue;
    if (!fallsBeside(y, i, longest, value - (1 - share) * drop)) continue;
    let count = 0;
    for (let j = Math.max(0, i - half); j <= Math.min(n - 1, i + half); j++) window[count++] = y[j]!;
    const level = medianInPlace(window, count);
    const height = value - level;
    if (height < drop) continue;
    let from = i;
    let to = i;
    while (from > 0 && y[from - 1]! - level > 0.5 * height) from--;
    while (to < n - 1 && y[to + 1]! - level > 0.5 * height) to++;
    const length = to - from + 1;
    if (length > longest) continue;
    // One point at half the resolution of two points may be a line sampled at its top: its neighbours then stand near half height.
    const shoulder = Math.max(y[Math.max(0, from - 1)]!, y[Math.min(n - 1, to + 1)]!) - level;
    if (shoulder > share * height) continue;
    const a = Math.max(0, from - 2);
    const b = Math.min(n - 1, to + 2);
    if (out === y) out = y.slice();
    for (let j = a + 1; j < b; j++) out[j] = y[a]! + ((y[b]! - y[a]!) * (j - a)) / (b - a);
    spikes.push(i);
  }
  return { y: out, spikes };
}

import { medianInPlace } from './statistics.ts';
import { workArray } from './work-array.ts';

export type NoiseOptions = {
  /** Distance in points of the three values compared: at least the length over which neighbouring noise is correlated. */
  readonly lag: number;
  /** Points to a block in which the noise counts as even. */
  readonly block: number;
};
export const NOISE_DEFAULTS: NoiseOptions = { lag: 1, block: 192 };

/** Shorter blocks need every difference. */
const LEAST_BLOCK_TO_SKIP = 96;
/** Every so many points make a block's median level. */
const LEVEL_STRIDE = 3;

/** Standard deviation of normal noise from a median absolute deviation. */
const MAD_TO_SIGMA = 1.482602218505602;

/**
 * Local standard deviation of the noise of y, same length (n >= 5), in y's unit, never below `floor`.
 * Second differences y[i-lag] - 2 y[i] + y[i+lag] take out level and slope; the median absolute deviation per block ignores lines;
 * each block takes the median with its neighbours and values in between are interpolated. Written to `out`, of the same length.
 */
export function localNoise(y: Float64Array, options: NoiseOptions = NOISE_DEFAULTS, out: Float64Array = new Float64Array(y.length)): Float64Array {
  const n = y.length;
  const lag = Math.max(1, Math.min(options.lag, Math.floor((n - 1) / 2)));
  const usable = n - 2 * lag;
  const blocks = Math.max(1, Math.floor(usable / options.block));
  const size = usable / blocks;
  const sigma = new Float64Array(blocks);
  const scratch = new Float64Array(Math.ceil(size) + 1);
  // Differences this near share most of their noise: every second or third of them knows nearly as much as all.
  const stride = size < LEAST_BLOCK_TO_SKIP ? 1 : lag < 4 ? 2 : 3;
  let largest = 0;
  for (let i = 0; i < n; i++) {
    const size = Math.abs(y[i]!);
    if (size > largest) largest = size;
  }
  // Rounding alone leaves about this much on exact data; keeps every division safe.
  const floor = Math.max(largest * 1e-9, Number.MIN_VALUE * 1e6);
  for (let b = 0; b < blocks; b++) {
    const from = lag + Math.floor(b * size);
    const to = lag + Math.min(usable, Math.floor((b + 1) * size));
    let count = 0;
    for (let i = from; i < to; i += stride) scratch[count++] = Math.abs(y[i - lag]! - 2 * y[i]! + y[i + lag]!);
    sigma[b] = count === 0 ? floor : Math.max(floor, (MAD_TO_SIGMA / Math.sqrt(6)) * medianInPlace(scratch, count));
  }
  const steady = new Float64Array(blocks);
  const three = new Float64Array(3);
  for (let b = 0; b < blocks; b++) {
    three[0] = sigma[Math.max(0, b - 1)]!;
    three[1] = sigma[b]!;
    three[2] = sigma[Math.min(blocks - 1, b + 1)]!;
    steady[b] = medianInPlace(three, 3);
  }
  return betweenBlocks(steady, out, lag, size);
}

/** Straight lines between the middles of the blocks, level beyond the first and the last. */
function betweenBlocks(values: Float64Array, out: Float64Array, first: number, size: number): Float64Array {
  const n = out.length;
  const blocks = values.length;
  const middle = (b: number): number => first + (b + 0.5) * size;
  let i = 0;
  for (; i < n && i <= middle(0); i++) out[i] = values[0]!;
  for (let b = 0; b < blocks - 1; b++) {
    const slope = (values[b + 1]! - values[b]!) / size;
    const from = middle(b);
    const to = middle(b + 1);
    for (; i < n && i <= to; i++) out[i] = values[b]! + slope * (i - from);
  }
  for (; i < n; i++) out[i] = values[blocks - 1]!;
  return out;
}

export type RawNoise = {
  /** Larger of the noise at short and at longer distance, so that interpolated or smoothed files do not look quieter than they are. */
  readonly noise: Float64Array;
  /** Whether neighbouring points carry noise of their own, over the whole curve. */
  readonly white: boolean;
};
/** The median ratio of noise at longer to noise at short distance that chance alone gives white noise stays below this. */
const WHITE_RATIO = 1.15;

const farWork = workArray();

/** Noise of a raw curve, one standard deviation per point. */
export function noiseOfRaw(y: Float64Array, block: number = NOISE_DEFAULTS.block): RawNoise {
  const noise = localNoise(y, { lag: 1, block });
  const far = localNoise(y, { lag: 3, block }, farWork(y.length));
  let short = 0;
  let long = 0;
  for (let i = 0; i < noise.length; i++) {
    short += noise[i]!;
    long += far[i]!;
    if (far[i]! > noise[i]!) noise[i] = far[i]!;
  }
  return { noise, white: long < WHITE_RATIO * short };
}

/**
 * Noise measured on the smoothed curve, but no more than smoothing leaves of the raw curve's: where lines crowd they pass for noise.
 * One standard deviation per point. gain: what the smoothing leaves of white noise.
 */
export function atMostOfRaw(measured: Float64Array, { noise, white }: RawNoise, gain: number): Float64Array {
  const share = white ? WHITE_RATIO * gain : 1;
  const out = measured.slice();
  for (let i = 0; i < out.length; i++) {
    const most = share * noise[i]!;
    if (out[i]! > most) out[i] = most;
  }
  return out;
}

/** Median of y per block, interpolated in between: the level that the block's noise belongs to. Written to `out`, of y's length. */
export function localLevel(y: Float64Array, out: Float64Array, block: number = NOISE_DEFAULTS.block): Float64Array {
  const n = y.length;
  const blocks = Math.max(1, Math.floor(n / block));
  const size = n / blocks;
  const level = new Float64Array(blocks);
  const scratch = new Float64Array(Math.ceil(size) + 1);
  const stride = size < LEAST_BLOCK_TO_SKIP ? 1 : LEVEL_STRIDE;
  for (let b = 0; b < blocks; b++) {
    const from = Math.floor(b * size);
    const to = Math.max(from + 1, Math.floor((b + 1) * size));
    let count = 0;
    for (let i = from; i < to; i += stride) scratch[count++] = y[i]!;
    level[b] = medianInPlace(scratch, count);
  }
  return betweenBlocks(level, out, 0, size);
}

/**
 * Noise of counts grows with the square root of the light: the block's noise scaled from the block's level to each point's own.
 * Same lengths; never below the block's noise. Written to `out`.
 */
export function shotScaledNoise(y: Float64Array, level: Float64Array, noise: Float64Array, out: Float64Array): Float64Array {
  let least = Infinity;
  for (let i = 0; i < y.length; i++) {
    if (y[i]! < least) least = y[i]!;
    if (level[i]! < least) least = level[i]!;
  }
  for (let i = 0; i < out.length; i++) {
    const sigma = noise[i]!;
    const ratio = (y[i]! - least) / (level[i]! - least + 5 * sigma);
    out[i] = ratio > 1 ? sigma * Math.sqrt(ratio) : sigma;
  }
  return out;
}

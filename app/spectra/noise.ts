import { medianInPlace } from './statistics.ts';

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
 * each block takes the median with its neighbours and values in between are interpolated.
 */
export function localNoise(y: Float64Array, options: NoiseOptions = NOISE_DEFAULTS): Float64Array {
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
  return betweenBlocks(steady, n, lag, size);
}

/** Straight lines between the middles of the blocks, level beyond the first and the last. */
function betweenBlocks(values: Float64Array, n: number, first: number, size: number): Float64Array {
  const out = new Float64Array(n);
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

/** Noise of a raw curve, one standard deviation per point. */
export function noiseOfRaw(y: Float64Array, block: number = NOISE_DEFAULTS.block): RawNoise {
  const noise = localNoise(y, { lag: 1, block });
  const far = localNoise(y, { lag: 3, block });
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
  return measured.map((value, i) => (value > share * noise[i]! ? share * noise[i]! : value));
}

/** Median of y per block, interpolated in between: the level that the block's noise belongs to. Same length as y. */
export function localLevel(y: Float64Array, block: number = NOISE_DEFAULTS.block): Float64Array {
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
  return betweenBlocks(level, n, 0, size);
}

/**
 * Noise of counts grows with the square root of the light: the block's noise scaled from the block's level to each point's own.
 * Same lengths; never below the block's noise.
 */
export function shotScaledNoise(y: Float64Array, level: Float64Array, noise: Float64Array): Float64Array {
  let least = Infinity;
  for (let i = 0; i < y.length; i++) {
    if (y[i]! < least) least = y[i]!;
    if (level[i]! < least) least = level[i]!;
  }
  const out = noise.slice();
  for (let i = 0; i < out.length; i++) {
    const ratio = (y[i]! - least) / (level[i]! - least + 5 * noise[i]!);
    if (ratio > 1) out[i] = out[i]! * Math.sqrt(ratio);
  }
  return out;
}

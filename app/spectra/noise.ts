import { medianInPlace } from './statistics.ts';

export type NoiseOptions = {
  /** Distance in points of the three values compared: at least the length over which neighbouring noise is correlated. */
  readonly lag: number;
  /** Points to a block in which the noise counts as even. */
  readonly block: number;
};
export const NOISE_DEFAULTS: NoiseOptions = { lag: 1, block: 192 };

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
  let largest = 0;
  for (let i = 0; i < n; i++) largest = Math.max(largest, Math.abs(y[i]!));
  // Rounding alone leaves about this much on exact data; keeps every division safe.
  const floor = Math.max(largest * 1e-9, Number.MIN_VALUE * 1e6);
  for (let b = 0; b < blocks; b++) {
    const from = lag + Math.floor(b * size);
    const to = lag + Math.min(usable, Math.floor((b + 1) * size));
    let count = 0;
    for (let i = from; i < to; i++) scratch[count++] = Math.abs(y[i - lag]! - 2 * y[i]! + y[i + lag]!);
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
  const out = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const at = (i - lag) / size - 0.5;
    const b = Math.max(0, Math.min(blocks - 1, Math.floor(at)));
    const c = Math.min(blocks - 1, b + 1);
    const t = Math.max(0, Math.min(1, at - b));
    out[i] = steady[b]! * (1 - t) + steady[c]! * t;
  }
  return out;
}

/** Larger of the noise at short and at longer distance, so that interpolated or smoothed files do not look quieter than they are. */
export function noiseOfRaw(y: Float64Array, block: number = NOISE_DEFAULTS.block): Float64Array {
  const near = localNoise(y, { lag: 1, block });
  const far = localNoise(y, { lag: 3, block });
  for (let i = 0; i < near.length; i++) near[i] = Math.max(near[i]!, far[i]!);
  return near;
}

/** Median of y per block, interpolated in between: the level that the block's noise belongs to. Same length as y. */
export function localLevel(y: Float64Array, block: number = NOISE_DEFAULTS.block): Float64Array {
  const n = y.length;
  const blocks = Math.max(1, Math.floor(n / block));
  const size = n / blocks;
  const level = new Float64Array(blocks);
  for (let b = 0; b < blocks; b++) level[b] = medianInPlace(y.slice(Math.floor(b * size), Math.max(Math.floor(b * size) + 1, Math.floor((b + 1) * size))));
  const out = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const at = i / size - 0.5;
    const b = Math.max(0, Math.min(blocks - 1, Math.floor(at)));
    const c = Math.min(blocks - 1, b + 1);
    const t = Math.max(0, Math.min(1, at - b));
    out[i] = level[b]! * (1 - t) + level[c]! * t;
  }
  return out;
}

/**
 * Noise of counts grows with the square root of the light: the block's noise scaled from the block's level to each point's own.
 * Same lengths; never below the block's noise.
 */
export function shotScaledNoise(y: Float64Array, level: Float64Array, noise: Float64Array): Float64Array {
  let least = Infinity;
  for (let i = 0; i < y.length; i++) least = Math.min(least, y[i]!, level[i]!);
  const out = noise.slice();
  for (let i = 0; i < out.length; i++) {
    const ratio = (y[i]! - least) / (level[i]! - least + 5 * noise[i]!);
    if (ratio > 1) out[i] = out[i]! * Math.sqrt(ratio);
  }
  return out;
}

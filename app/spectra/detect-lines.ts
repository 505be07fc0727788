import type { BaselineKind } from './baseline-of.ts';
import { baselineOf } from './baseline-of.ts';
import type { RawPeak } from './find-peaks.ts';
import { findPeaks } from './find-peaks.ts';
import { fitGroups } from './fit-groups.ts';
import { atMostOfRaw, localLevel, localNoise, NOISE_DEFAULTS, noiseOfRaw, shotScaledNoise } from './noise.ts';
import { removeSpikes, SPIKE_DEFAULTS } from './remove-spikes.ts';
import type { Saturation } from './saturation.ts';
import { findSaturation } from './saturation.ts';
import { noiseGain, savitzkyGolay } from './savitzky-golay.ts';
import { medianInPlace } from './statistics.ts';
import { workArray } from './work-array.ts';

export type DetectionOptions = {
  /** Full width at half maximum of the instrument, x's unit. */
  readonly resolution: number | null;
  /** Bands wider than about this become baseline, x's unit. */
  readonly baselinePeriod: number;
  /** The program's own where none is named. */
  readonly baseline?: BaselineKind;
  /** Wider peaks are not lines, x's unit. */
  readonly widest: number;
  /** Noise grows with the light, as it does for counts. */
  readonly shotNoise: boolean;
};

/** Thresholds in standard deviations of the smoothed curve's noise; the false-alarm rate they give is measured in the tests. */
export const DETECTION_DEFAULTS = { prominenceSigmas: 5, heightSigmas: 5, leastSnr: 3, smoothingDegree: 2, mostPeaks: 60 } as const;

const STEPS_SAMPLED = 256;
/** A peak this many times weaker beside a stronger one, within the smoothing width, is a ripple of the smoothing. */
const RIPPLE_RATIO = 25;

/** A line with its fit, positions and widths in x's unit, heights over the local baseline. */
export type DetectedLine = {
  readonly index: number;
  readonly position: number;
  readonly height: number;
  readonly fwhm: number;
  readonly prominence: number;
  /** Height over the standard deviation of the raw curve's noise nearby. */
  readonly snr: number;
  readonly standardError: number | null;
  /** On the flank of a stronger line, without a maximum of its own. */
  readonly shoulder?: boolean;
};

export type Detection = {
  readonly despiked: Float64Array;
  readonly smoothed: Float64Array;
  readonly baseline: Float64Array;
  /** Noise of the raw and of the smoothed curve, one standard deviation per point. */
  readonly noise: Float64Array;
  readonly smoothedNoise: Float64Array;
  readonly lines: readonly DetectedLine[];
  readonly spikes: readonly number[];
  readonly saturation: Saturation | null;
  /** Median distance of the points. */
  readonly step: number;
  /** Given resolution, or the narrowest clear line where none was given; null where neither is known. */
  readonly resolution: number | null;
};

/** Median distance of the points, from up to STEPS_SAMPLED of them spread over the axis. */
function medianStep(x: Float64Array): number {
  const stride = Math.max(1, Math.floor((x.length - 1) / STEPS_SAMPLED));
  const steps = new Float64Array(Math.floor((x.length - 2) / stride) + 1);
  for (let k = 0; k < steps.length; k++) steps[k] = x[k * stride + 1]! - x[k * stride]!;
  return medianInPlace(steps);
}

/** Odd smoothing width of about 1.2 resolutions: takes less than a tenth off a line as narrow as the instrument allows. */
function smoothingWidth(resolutionPoints: number | null, n: number): number {
  const wanted = resolutionPoints === null ? 7 : 2 * Math.round(0.6 * resolutionPoints) + 1;
  const largest = n % 2 === 0 ? n - 1 : n;
  return Math.max(5, Math.min(25, wanted, largest));
}

/** Smoothing leaves ripples beside a line far stronger than they are; nearer than about one width they are no lines. */
function withoutRipples(peaks: readonly RawPeak[], width: number): RawPeak[] {
  return peaks.filter((peak) => !peaks.some((other) => Math.abs(other.index - peak.index) <= width + 1 && other.prominence > RIPPLE_RATIO * peak.prominence));
}

function narrowestClear(lines: readonly DetectedLine[], step: number): number | null {
  let least = Infinity;
  for (const line of lines) if (line.snr >= 10 && line.standardError !== null && line.fwhm < least) least = line.fwhm;
  return Number.isFinite(least) ? Math.max(least, 1.5 * step) : null;
}

const levelWork = workArray();
const spikeWork = workArray();
const thresholdWork = workArray();
const correctedWork = workArray();
const unevennessWork = workArray();

/**
 * Conditioning and peak finding of one curve: spikes out, smoothing, baseline, lines by prominence and signal over noise, positions by fit.
 * x strictly ascending, y finite, same length >= 20.
 */
export function detectLines(x: Float64Array, y: Float64Array, options: DetectionOptions): Detection {
  const n = x.length;
  const step = medianStep(x);
  const resolutionPoints = options.resolution === null ? null : options.resolution / step;
  const rawNoise = noiseOfRaw(y);
  const { noise } = rawNoise;
  const saturation = findSaturation(y, noise);
  const spikeNoise = options.shotNoise ? shotScaledNoise(y, localLevel(y, levelWork(n)), noise, spikeWork(n)) : noise;
  const { y: despiked, spikes } = removeSpikes(y, spikeNoise, { ...SPIKE_DEFAULTS, ...(resolutionPoints === null ? {} : { resolutionPoints }) });
  const width = smoothingWidth(resolutionPoints, n);
  const smoothed = savitzkyGolay(despiked, { width, degree: DETECTION_DEFAULTS.smoothingDegree });
  const unevenness = localNoise(smoothed, { lag: width, block: NOISE_DEFAULTS.block }, unevennessWork(n));
  const smoothedNoise = atMostOfRaw(unevenness, rawNoise, noiseGain(width, DETECTION_DEFAULTS.smoothingDegree));
  const baseline = baselineOf(options.baseline ?? 'under-lines', smoothed, unevenness, Math.max(10, options.baselinePeriod / step));
  const threshold = options.shotNoise ? shotScaledNoise(smoothed, baseline, smoothedNoise, thresholdWork(n)) : smoothedNoise;
  const corrected = correctedWork(n);
  for (let i = 0; i < n; i++) corrected[i] = smoothed[i]! - baseline[i]!;
  const raw = withoutRipples(findPeaks(corrected, threshold, { prominence: DETECTION_DEFAULTS.prominenceSigmas, height: DETECTION_DEFAULTS.heightSigmas })
    .sort((a, b) => b.prominence - a.prominence).slice(0, DETECTION_DEFAULTS.mostPeaks), width).sort((a, b) => a.index - b.index);
  const lines = fitGroups({ x, y: despiked, baseline, noise, threshold, corrected, peaks: raw, step })
    .filter((line) => line.snr >= DETECTION_DEFAULTS.leastSnr && line.fwhm <= options.widest);
  return { despiked, smoothed, baseline, noise, smoothedNoise, lines, spikes, saturation, step, resolution: options.resolution ?? narrowestClear(lines, step) };
}

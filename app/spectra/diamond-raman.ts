import { warmth } from '../reference/optical-centre.ts';
import { DIAMOND_RAMAN_CM1, DIAMOND_RAMAN_COLD_CM1 } from '../reference/reference-lines.ts';
import type { DiamondRamanResult } from './analysis.ts';
import { airFromRamanShift, ramanShiftFromAir } from './convert-axis.ts';
import type { DetectedLine, Detection } from './detect-lines.ts';

/** Agreement asked of the line (judgement): ±3 cm-1, or 0.6 resolutions where that is more; never beyond 10 cm-1. */
export const RAMAN_TOLERANCE = { leastCm1: 3, resolutions: 0.6, mostCm1: 10 } as const;
/** Wider lines are not the first-order line, cm-1: small instruments show up to 60; where the resolution is stated, it decides (judgement). */
export const WIDEST_CM1 = { resolutionUnknown: 60, resolutionStated: 30, resolutions: 1.5 } as const;
/** So many other sharp lines, this strong against the one found, show another material (judgement). */
const OTHERS = { photoluminescence: { count: 3, share: 1 }, raman: { count: 2, share: 0.5 } } as const;
/** Signal over noise asked before the line counts as seen. */
const LEAST_SNR = 5;
/**
 * Share of the brightest light that the line must have been able to show before it counts as absent (judgement).
 * Real diamonds go below it where a centre outshines the line; those are caught by the centre itself, see check-laser.
 */
const WEAKEST_SHARE = { photoluminescence: 0.01, raman: 0.02 } as const;
/** How many standard deviations of the smoothed noise a line needs to be seen. */
const DETECTION_SIGMAS = 5;

export type DiamondRamanInput = {
  readonly x: Float64Array;
  readonly unit: 'nm' | 'raman-shift';
  readonly detection: Detection;
  /** In air, nm; may be missing on a Raman-shift axis. */
  readonly laserNm: number | undefined;
  readonly temperatureK: number;
  /** One standard deviation, nm. */
  readonly calibrationErrorNm: number;
  /** Whether the person stated the resolution, or it is a guess from the curve. */
  readonly resolutionStated: boolean;
  /** Lines that are known to be something of diamond's. */
  readonly isNamed: (line: DetectedLine) => boolean;
};
export type DiamondRaman = { readonly result: DiamondRamanResult; /** The line itself, where present. */ readonly line: DetectedLine | null; readonly reason: string };

/** Green light, for turning calibration in nm into cm-1 where no laser is stated. */
const FALLBACK_LASER_NM = 532;

type Place = { readonly expected: number; readonly tolerance: number; readonly perCm1: number; readonly expectedNm: number; readonly laser: number };

function place(input: DiamondRamanInput): Place {
  const t = warmth(input.temperatureK);
  const shift = DIAMOND_RAMAN_COLD_CM1 + (DIAMOND_RAMAN_CM1 - DIAMOND_RAMAN_COLD_CM1) * t;
  const laser = input.laserNm ?? FALLBACK_LASER_NM;
  const expectedNm = airFromRamanShift(laser, shift);
  const nmPerCm1 = expectedNm ** 2 * 1e-7;
  const perCm1 = input.unit === 'nm' ? nmPerCm1 : 1;
  const resolutionCm1 = (input.detection.resolution ?? 0) / perCm1;
  const toleranceCm1 = Math.min(RAMAN_TOLERANCE.mostCm1,
    Math.max(RAMAN_TOLERANCE.leastCm1, RAMAN_TOLERANCE.resolutions * resolutionCm1) + (2 * input.calibrationErrorNm) / nmPerCm1);
  return { expected: input.unit === 'nm' ? expectedNm : shift, tolerance: toleranceCm1 * perCm1, perCm1, expectedNm, laser };
}

const nearest = (x: Float64Array, value: number): number => {
  let lo = 0;
  let hi = x.length - 1;
  while (lo < hi) {
    const mid = (lo + hi) >> 1;
    if (x[mid]! < value) lo = mid + 1;
    else hi = mid;
  }
  return lo;
};

function saturatedNear(input: DiamondRamanInput, from: number, to: number): boolean {
  return (input.detection.saturation?.runs ?? []).some(([a, b]) => input.x[b]! >= from && input.x[a]! <= to);
}

/** Whether the curve is full of sharp lines that are not diamond's, so that one of them falls on the place by chance. */
function othersOutshine(input: DiamondRamanInput, found: DetectedLine, laserNm: number): boolean {
  const { count, share } = OTHERS[input.unit === 'nm' ? 'photoluminescence' : 'raman'];
  let others = 0;
  for (const line of input.detection.lines) {
    if (line === found || line.height < share * found.height || input.isNamed(line)) continue;
    const shift = input.unit === 'nm' ? ramanShiftFromAir(laserNm, line.position) : line.position;
    const widthCm1 = input.unit === 'nm' ? line.fwhm / (line.position ** 2 * 1e-7) : line.fwhm;
    const secondOrder = shift > 2100 && shift < 2720;
    if (shift > 90 && shift < 3400 && !secondOrder && widthCm1 < 60) others++;
  }
  return others >= count;
}

/** Why a line in the right place does not count: its width, cm-1. */
const tooWideWords = (widthCm1: number, resolutionStated: boolean): string => `a line stands there, but ${widthCm1.toFixed(0)} cm⁻¹ wide, ${resolutionStated
  ? 'wider than this instrument shows the diamond line'
  : `and without a stated resolution none above ${WIDEST_CM1.resolutionUnknown} cm⁻¹ is taken for it: state the instrument’s resolution`}`;

/** Greatest light over the darkest point: what the line would have to be seen beside. */
function brightest(y: Float64Array): number {
  let least = Infinity;
  let most = -Infinity;
  for (const value of y) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return most - least;
}

/**
 * Looks for the first-order Raman line of diamond where the laser puts it.
 * 'absent' only where the axis covers it, nothing is saturated there and a line as weak as real diamonds show would have been seen;
 * otherwise 'masked', which is no information. Null where the axis does not reach the line, or a wavelength axis has no laser.
 */
export function findDiamondRaman(input: DiamondRamanInput): DiamondRaman | null {
  if (input.unit === 'nm' && input.laserNm === undefined) return null;
  const { expected, tolerance, perCm1, expectedNm, laser } = place(input);
  const { x, detection } = input;
  const margin = tolerance + 5 * perCm1;
  if (x[0]! > expected - margin || x[x.length - 1]! < expected + margin) return null;
  const i = nearest(x, expected);
  const resolution = detection.resolution ?? 0;
  const widest = input.resolutionStated ? Math.max(WIDEST_CM1.resolutionStated * perCm1, WIDEST_CM1.resolutions * resolution) : WIDEST_CM1.resolutionUnknown * perCm1;
  let best: DetectedLine | null = null;
  for (const line of detection.lines) {
    if (Math.abs(line.position - expected) > tolerance || line.fwhm > widest || line.snr < LEAST_SNR) continue;
    if (best === null || line.height > best.height) best = line;
  }
  const limit = DETECTION_SIGMAS * detection.smoothedNoise[i]!;
  const common = { expectedNm, detectionLimit: limit };
  const from = expected - tolerance - resolution;
  const to = expected + tolerance + resolution;
  if (saturatedNear(input, from, to)) {
    return { result: { ...common, foundNm: null, shiftCm1: null, present: false, state: 'masked', detectionLimit: null }, line: null, reason: 'the detector is saturated there' };
  }
  if (best !== null && othersOutshine(input, best, laser)) {
    return { result: { ...common, foundNm: null, shiftCm1: null, present: false, state: 'masked' }, line: null, reason: 'other sharp lines as strong as the one there show another material' };
  }
  if (best !== null) {
    const foundNm = input.unit === 'nm' ? best.position : airFromRamanShift(laser, best.position);
    const shiftCm1 = input.unit === 'nm' ? ramanShiftFromAir(laser, best.position) : best.position;
    return { result: { ...common, foundNm, shiftCm1, present: true, state: 'present' }, line: best, reason: '' };
  }
  // A line that the instrument can't part from this place may hide it, or be it, drawn aside by a neighbour.
  const hiding = detection.lines.find((line) => line.snr >= LEAST_SNR && Math.abs(line.position - expected) <= Math.max(resolution, Math.min(line.fwhm, WIDEST_CM1.resolutionUnknown * perCm1)));
  if (hiding !== undefined) {
    const tooWide = Math.abs(hiding.position - expected) <= tolerance && hiding.fwhm > widest;
    return { result: { ...common, foundNm: null, shiftCm1: null, present: false, state: 'masked' }, line: null, reason: tooWide ? tooWideWords(hiding.fwhm / perCm1, input.resolutionStated) : 'a line lies too close to its place to tell them apart' };
  }
  const light = brightest(detection.smoothed);
  const otherLines = detection.lines.some((line) => line.snr >= 10);
  const share = WEAKEST_SHARE[input.unit === 'nm' ? 'photoluminescence' : 'raman'];
  const enough = light > 30 * detection.noise[i]! && limit <= share * light;
  const state = enough || (input.unit === 'raman-shift' && otherLines && limit <= 0.05 * light) ? 'absent' : 'masked';
  return {
    result: { ...common, foundNm: null, shiftCm1: null, present: false, state }, line: null,
    reason: state === 'masked' ? 'luminescence or noise would drown it' : '',
  };
}

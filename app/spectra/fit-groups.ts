import type { DetectedLine } from './detect-lines.ts';
import type { RawPeak } from './find-peaks.ts';
import type { FittedPeak, PeakGuess } from './fit-peak.ts';
import { fitPeaks } from './fit-peak.ts';

export type FitGroupsInput = {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly baseline: Float64Array;
  readonly noise: Float64Array;
  /** Noise of the smoothed curve that a line must beat. */
  readonly threshold: Float64Array;
  /** Smoothed curve over its baseline. */
  readonly corrected: Float64Array;
  /** Ascending in index. */
  readonly peaks: readonly RawPeak[];
  readonly step: number;
};

/** Neighbours nearer than this many widths are fitted together. */
const TOGETHER_WIDTHS = 2.2;
const MOST_TOGETHER = 4;
/** Half of the fitted window, in widths, and its least number of points. */
const WINDOW_WIDTHS = 1.75;
const LEAST_HALF_POINTS = 6;
const MOST_POINTS = 64;
/** A narrow top on a broad hump, or a line whose fit can't be trusted, must stand this clear of the smoothed curve's noise. */
const LEAST_LOCAL_SIGMAS = 8;
/** What a fitted height must reach elsewhere. */
const LEAST_SIGMAS = 4;
const CONTAINED = 0.8;
const WEAK_SNR = 15;
/** Below this many of its own standard errors a fitted height means nothing. */
const LEAST_HEIGHT_ERRORS = 3;
/** Below this share of the height and of the width, a top is a line of its own on a hump. */
const HUMP_HEIGHT = 0.2;
const HUMP_WIDTH = 0.35;

type Guess = PeakGuess & { readonly raw: RawPeak };

/** Width, in points, and height of a peak as it stands in its near surroundings: a narrow line on a broad hump is narrow. */
function localShape(input: FitGroupsInput, raw: RawPeak): { points: number; height: number } {
  const y = input.corrected;
  const n = y.length;
  const top = y[raw.index]!;
  const farthest = Math.max(raw.index - raw.leftValley, raw.rightValley - raw.index);
  for (let reach = 4; reach < 2 * farthest; reach = Math.ceil(1.5 * reach)) {
    let left = top;
    let right = top;
    for (let i = Math.max(raw.leftValley, raw.index - reach, 0); i < raw.index; i++) left = Math.min(left, y[i]!);
    for (let i = Math.min(raw.rightValley, raw.index + reach, n - 1); i > raw.index; i--) right = Math.min(right, y[i]!);
    const height = top - Math.max(left, right);
    if (height < LEAST_LOCAL_SIGMAS * input.threshold[raw.index]! && height < 0.8 * raw.prominence) continue;
    const level = top - height / 2;
    let a = raw.index;
    while (a > 0 && y[a]! > level) a--;
    let b = raw.index;
    while (b < n - 1 && y[b]! > level) b++;
    const from = a + (level - y[a]!) / Math.max(1e-300, y[a + 1]! - y[a]!);
    const to = b - (level - y[b]!) / Math.max(1e-300, y[b - 1]! - y[b]!);
    // The top of a broader peak, cut off by the reach, would be 1.4 reaches wide.
    if (to - from < CONTAINED * reach) return { points: to - from, height };
  }
  return { points: raw.rightHalf - raw.leftHalf, height: raw.prominence };
}

function guesses(input: FitGroupsInput): Guess[] {
  return input.peaks.map((raw) => {
    const { points, height } = localShape(input, raw);
    const around = (input.x[Math.min(input.x.length - 1, raw.index + 1)]! - input.x[Math.max(0, raw.index - 1)]!) / 2;
    return { raw, position: input.x[raw.index]!, height, fwhm: Math.max(1.2, points) * around };
  });
}

/** The wider of two widths, but not more than twice the narrower. */
const togetherWidth = (a: number, b: number): number => Math.min(Math.max(a, b), 2 * Math.min(a, b));

/** Point of the lowest value between two points. */
function lowestBetween(y: Float64Array, from: number, to: number): number {
  let low = from;
  for (let i = from; i <= to; i++) if (y[i]! < y[low]!) low = i;
  return low;
}

function groupNeighbours(all: readonly Guess[]): Guess[][] {
  const groups: Guess[][] = [];
  for (const guess of all) {
    const group = groups.at(-1);
    const before = group?.at(-1);
    if (group && before && group.length < MOST_TOGETHER && guess.position - before.position < TOGETHER_WIDTHS * togetherWidth(guess.fwhm, before.fwhm)) group.push(guess);
    else groups.push([guess]);
  }
  return groups;
}

/** Whether the peak's top is a small narrow line on a broad one. */
function onHump({ raw, height, fwhm }: Guess, step: number): boolean {
  return height < HUMP_HEIGHT * raw.prominence && fwhm < HUMP_WIDTH * (raw.rightHalf - raw.leftHalf) * step;
}

/** First and last point of the window around a group; it ends in the valley towards the next group. */
function windowOf(input: FitGroupsInput, group: readonly Guess[], previous: Guess | undefined, next: Guess | undefined): [number, number] {
  const { x } = input;
  const first = group[0]!;
  const last = group.at(-1)!;
  let from = first.raw.index;
  while (from > 0 && x[from]! > first.position - WINDOW_WIDTHS * first.fwhm) from--;
  let to = last.raw.index;
  while (to < x.length - 1 && x[to]! < last.position + WINDOW_WIDTHS * last.fwhm) to++;
  from = Math.max(0, Math.min(from, first.raw.index - LEAST_HALF_POINTS));
  to = Math.min(x.length - 1, Math.max(to, last.raw.index + LEAST_HALF_POINTS));
  if (previous && from < previous.raw.index) from = Math.min(first.raw.index - 3, lowestBetween(input.corrected, previous.raw.index, first.raw.index));
  if (next && to > next.raw.index) to = Math.max(last.raw.index + 3, lowestBetween(input.corrected, last.raw.index, next.raw.index));
  return [Math.max(0, from), Math.min(x.length - 1, to)];
}

/** The window's points over the baseline; many points are averaged in bins, which keeps what they know of a broad line. */
function binned(input: FitGroupsInput, from: number, to: number): { wx: Float64Array; wy: Float64Array } {
  const stride = Math.max(1, Math.ceil((to - from + 1) / MOST_POINTS));
  const points = Math.floor((to - from + 1) / stride);
  const wx = new Float64Array(points);
  const wy = new Float64Array(points);
  for (let j = 0; j < points; j++) {
    let sx = 0;
    let sy = 0;
    for (let i = from + j * stride; i < from + (j + 1) * stride; i++) {
      sx += input.x[i]!;
      sy += input.y[i]! - input.baseline[i]!;
    }
    wx[j] = sx / stride;
    wy[j] = sy / stride;
  }
  return { wx, wy };
}

function trustworthy(fit: FittedPeak, guess: Guess): boolean {
  return fit.height > LEAST_HEIGHT_ERRORS * fit.heightError && Number.isFinite(fit.positionError) && fit.positionError < guess.fwhm
    && Math.abs(fit.position - guess.position) < 0.75 * guess.fwhm && fit.fwhm > 0.25 * guess.fwhm && fit.fwhm < 4 * guess.fwhm && fit.height < 4 * guess.height;
}

/** Position of the parabola through the maximum and its neighbours. */
function parabola(x: Float64Array, y: Float64Array, i: number): number {
  const a = y[i - 1]!;
  const b = y[i]!;
  const c = y[i + 1]!;
  const bend = a - 2 * b + c;
  const shift = bend < 0 ? Math.max(-1, Math.min(1, (0.5 * (a - c)) / bend)) : 0;
  return shift < 0 ? x[i]! + shift * (x[i]! - x[i - 1]!) : x[i]! + shift * (x[i + 1]! - x[i]!);
}

/** Every peak with its fitted position, height and width; peaks whose fitted height does not stand out of the noise are dropped. */
export function fitGroups(input: FitGroupsInput): DetectedLine[] {
  const { x, y, noise, threshold } = input;
  const all = guesses(input);
  const groups = groupNeighbours(all);
  const lines: DetectedLine[] = [];
  const fitGroup = (group: readonly Guess[], previous: Guess | undefined, next: Guess | undefined): void => {
    const [from, to] = windowOf(input, group, previous, next);
    const { wx, wy } = binned(input, from, to);
    // A weak line does not carry its shape: one parameter less keeps its height and place steady.
    const weak = group.every((guess) => guess.height < WEAK_SNR * noise[guess.raw.index]!);
    const fit = fitPeaks(wx, wy, group, weak || wx.length < 6 * group.length + 8 ? 'gaussian' : 'pseudo-voigt');
    group.forEach((guess, j) => {
      const i = guess.raw.index;
      const fitted = fit?.peaks[j];
      if (fitted && trustworthy(fitted, guess)) {
        if (fitted.height < (onHump(guess, input.step) ? LEAST_LOCAL_SIGMAS : LEAST_SIGMAS) * threshold[i]!) return;
        lines.push({ index: i, position: fitted.position, height: fitted.height, fwhm: fitted.fwhm, prominence: guess.raw.prominence, snr: fitted.height / noise[i]!, standardError: fitted.positionError });
      } else if (guess.height >= LEAST_LOCAL_SIGMAS * threshold[i]!) {
        lines.push({ index: i, position: parabola(x, y, i), height: guess.height, fwhm: guess.fwhm, prominence: guess.raw.prominence, snr: guess.height / noise[i]!, standardError: null });
      }
    });
  };
  groups.forEach((group, k) => fitGroup(group, groups[k - 1]?.at(-1), groups[k + 1]?.[0]));
  // The hump below a narrow top is a line too.
  for (const guess of all) {
    const { raw } = guess;
    if (onHump(guess, input.step)) fitGroup([{ raw, position: guess.position, height: raw.prominence, fwhm: (raw.rightHalf - raw.leftHalf) * input.step }], undefined, undefined);
  }
  return lines.sort((a, b) => a.position - b.position);
}

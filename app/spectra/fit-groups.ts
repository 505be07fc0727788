import type { DetectedLine } from './detect-lines.ts';
import type { RawPeak } from './find-peaks.ts';
import { findShoulders } from './find-shoulders.ts';
import type { FittedPeak, PeakFit, PeakGuess } from './fit-peak.ts';
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
/** Further apart than those, but with so high a valley between, they are too. */
const RUN_TOGETHER_WIDTHS = 5;
const SHALLOW_VALLEY = 0.4;
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

/** Whether the curve hardly falls between two tops: then they overlap, however narrow the tops alone look. */
function runTogether(corrected: Float64Array, a: Guess, b: Guess): boolean {
  const valley = corrected[lowestBetween(corrected, a.raw.index, b.raw.index)]!;
  return valley > SHALLOW_VALLEY * Math.min(corrected[a.raw.index]!, corrected[b.raw.index]!);
}

function groupNeighbours(all: readonly Guess[], corrected: Float64Array): Guess[][] {
  const groups: Guess[][] = [];
  for (const guess of all) {
    const group = groups.at(-1);
    const before = group?.at(-1);
    const apart = before === undefined ? Infinity : (guess.position - before.position) / togetherWidth(guess.fwhm, before.fwhm);
    const together = apart < TOGETHER_WIDTHS || (apart < RUN_TOGETHER_WIDTHS && before !== undefined && runTogether(corrected, before, guess));
    if (group && group.length < MOST_TOGETHER && together) group.push(guess);
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

/** A line on another's flank stands out little, and its guess is small: beside others it may grow to this share of what the curve holds there, and to this many of their widths. */
const MOST_OF_CURVE = 1.2;
const MOST_OF_NEIGHBOUR = 2;

function trustworthy(fit: FittedPeak, guess: Guess, group: readonly Guess[], overBaseline: number): boolean {
  const neighbour = group.reduce((widest, other) => (other === guess ? widest : Math.max(widest, other.fwhm)), 0);
  const tallest = Math.max(4 * guess.height, neighbour > 0 ? MOST_OF_CURVE * overBaseline : 0);
  const broadest = Math.max(4 * guess.fwhm, MOST_OF_NEIGHBOUR * neighbour);
  return fit.height > LEAST_HEIGHT_ERRORS * fit.heightError && Number.isFinite(fit.positionError) && fit.positionError < guess.fwhm
    && Math.abs(fit.position - guess.position) < 0.75 * guess.fwhm && fit.fwhm > 0.25 * guess.fwhm && fit.fwhm < broadest && fit.height < tallest;
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

/** Shoulders are looked for this far around a group, in widths of its lines. */
const SHOULDER_REACH = 2.5;
/** A group must stand this clear of the noise before its flanks are searched. */
const LEAST_SNR_FOR_SHOULDER = 20;
/** Weaker beside its neighbour than this, a shoulder may be the neighbour's own shape. */
const LEAST_SHOULDER_SHARE = 0.04;
/** Least difference of the Bayesian information criterion: far beyond "very strong" (10; R. E. Kass, A. E. Raftery, J. Am. Stat. Assoc. 90 (1995) 773, from memory), since shapes are only nearly right. */
const LEAST_GAIN = 30;
const LEAST_SHOULDER_ERRORS = 6;

type Fitted = { readonly guesses: readonly Guess[]; readonly fit: PeakFit | null };

/** n ln RSS with its price of p ln n for the parameters. */
const information = (n: number, rss: number, parameters: number): number => n * Math.log(rss / n) + parameters * Math.log(n);

/** Whether the last peak of the fit is a line of its own beside the others. */
function isLineOfItsOwn(fit: PeakFit, guess: Guess): boolean {
  const last = fit.peaks.at(-1)!;
  const others = fit.peaks.slice(0, -1);
  const nearest = others.reduce((a, b) => (Math.abs(b.position - last.position) < Math.abs(a.position - last.position) ? b : a));
  return last.height > LEAST_SHOULDER_ERRORS * last.heightError && last.height > LEAST_SHOULDER_SHARE * nearest.height && last.positionError < 0.25 * last.fwhm
    && Math.abs(last.position - guess.position) < 0.75 * guess.fwhm && last.fwhm > 0.5 * guess.fwhm && last.fwhm < 2 * guess.fwhm
    && Math.abs(last.position - nearest.position) > 0.5 * Math.min(last.fwhm, nearest.fwhm);
}

/** The group with the line on its flank that the data ask for, if they do. */
function withShoulder(input: FitGroupsInput, group: readonly Guess[], previous: Guess | undefined, next: Guess | undefined): Fitted | null {
  const { x, y, noise, step } = input;
  if (group.length >= MOST_TOGETHER) return null;
  const strongest = group.reduce((a, b) => (b.height > a.height ? b : a));
  if (strongest.height < LEAST_SNR_FOR_SHOULDER * noise[strongest.raw.index]!) return null;
  const fwhmPoints = strongest.fwhm / step;
  const reach = Math.ceil(SHOULDER_REACH * fwhmPoints);
  const from = Math.max(previous === undefined ? 0 : previous.raw.index, group[0]!.raw.index - reach, 0);
  const to = Math.min(next === undefined ? x.length - 1 : next.raw.index, group.at(-1)!.raw.index + reach, x.length - 1);
  const tops = [...(previous === undefined ? [] : [previous.raw.index]), ...group.map((guess) => guess.raw.index), ...(next === undefined ? [] : [next.raw.index])];
  const shoulder = findShoulders({ y, noise: noise[strongest.raw.index]!, from, to, tops, fwhmPoints })[0];
  if (shoulder === undefined) return null;
  const guess: Guess = { position: x[shoulder.index]!, height: shoulder.height, fwhm: strongest.fwhm, raw: { ...strongest.raw, index: shoulder.index, prominence: shoulder.height, height: shoulder.height } };
  const all = [...group, guess];
  const [low, high] = windowOf(input, [...all].sort((a, b) => a.position - b.position), previous, next);
  const { wx, wy } = binned(input, low, high);
  if (wx.length < 6 * all.length + 8) return null;
  const without = fitPeaks(wx, wy, group, 'pseudo-voigt');
  const fit = fitPeaks(wx, wy, all, 'pseudo-voigt');
  if (without === null || fit === null || !isLineOfItsOwn(fit, guess)) return null;
  const gained = information(wx.length, without.rss, 4 * group.length + 2) - information(wx.length, fit.rss, 4 * all.length + 2);
  return gained > LEAST_GAIN ? { guesses: all, fit } : null;
}

function fitGroup(input: FitGroupsInput, group: readonly Guess[], previous: Guess | undefined, next: Guess | undefined): Fitted {
  const [from, to] = windowOf(input, group, previous, next);
  const { wx, wy } = binned(input, from, to);
  // A weak line does not carry its shape: one parameter less keeps its height and place steady.
  const weak = group.every((guess) => guess.height < WEAK_SNR * input.noise[guess.raw.index]!);
  return { guesses: group, fit: fitPeaks(wx, wy, group, weak || wx.length < 6 * group.length + 8 ? 'gaussian' : 'pseudo-voigt') };
}

function linesOf(input: FitGroupsInput, { guesses: group, fit }: Fitted, known: number): DetectedLine[] {
  const { x, y, noise, threshold, step } = input;
  return group.flatMap((guess, j): DetectedLine[] => {
    const i = guess.raw.index;
    const fitted = fit?.peaks[j];
    const shoulder = j >= known ? { shoulder: true } : {};
    const common = { index: i, prominence: guess.raw.prominence, ...shoulder };
    if (fitted && (j >= known || trustworthy(fitted, guess, group, input.corrected[i]!))) {
      if (fitted.height < (j >= known || onHump(guess, step) ? LEAST_LOCAL_SIGMAS : LEAST_SIGMAS) * threshold[i]!) return [];
      return [{ ...common, position: fitted.position, height: fitted.height, fwhm: fitted.fwhm, snr: fitted.height / noise[i]!, standardError: fitted.positionError }];
    }
    if (guess.height < LEAST_LOCAL_SIGMAS * threshold[i]!) return [];
    return [{ ...common, position: parabola(x, y, i), height: guess.height, fwhm: guess.fwhm, snr: guess.height / noise[i]!, standardError: null }];
  });
}

/**
 * Every peak with its fitted position, height and width, and lines on their flanks that make no maximum; peaks whose fitted height
 * does not stand out of the noise are dropped.
 */
export function fitGroups(input: FitGroupsInput): DetectedLine[] {
  const all = guesses(input);
  const groups = groupNeighbours(all, input.corrected);
  const lines = groups.flatMap((group, k) => {
    const previous = groups[k - 1]?.at(-1);
    const next = groups[k + 1]?.[0];
    return linesOf(input, withShoulder(input, group, previous, next) ?? fitGroup(input, group, previous, next), group.length);
  });
  // The hump below a narrow top is a line too.
  for (const guess of all) {
    const { raw } = guess;
    if (!onHump(guess, input.step)) continue;
    const hump: Guess = { raw, position: guess.position, height: raw.prominence, fwhm: (raw.rightHalf - raw.leftHalf) * input.step };
    lines.push(...linesOf(input, fitGroup(input, [hump], undefined, undefined), 1));
  }
  return lines.sort((a, b) => a.position - b.position);
}

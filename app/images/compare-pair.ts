import { err, ok, type Result } from '../result.ts';
import { alignPair, ALIGN_DEFAULTS, type AlignRefusal } from './align-pair.ts';
import { backgroundAbout, type Background } from './background.ts';
import { brightnessGrid } from './brightness-grid.ts';
import { DARK_BELOW, MARK_INNER, meanOf, measureMark, UNKNOWN_BACKGROUND, type MarkLight, type SeenDisc } from './mark-light.ts';
import { measureDisc, SECTORS, type Disc } from './measure-disc.ts';
import { pairNotes } from './pair-notes.ts';
import { PAIR_VERSION, type PairResult, type PairStone } from './pair-result.ts';
import type { Outline, Photograph } from './photograph.ts';
import { placer } from './placement.ts';
import { robustScores, STANDS_OUT_FROM } from './robust-scores.ts';

/** A photograph whose brightest places stay below this linear light shows nothing (judgement). */
const LEAST_LIGHT = 0.004;

export type PairMark = Outline & { readonly id: string; readonly number: number; readonly stoneId: string | null };

export type PairInput = {
  readonly longWave: Photograph; readonly shortWave: Photograph;
  /** Placed on the long-wave photograph. */
  readonly marks: readonly PairMark[];
  readonly stops: number; readonly stopsFrom: PairResult['stopsFrom'];
};

export type PairRefusal = AlignRefusal | { readonly code: 'black-frame'; readonly lamp: 'long-wave' | 'short-wave' } | { readonly code: 'no-marks' };

/** Stray light for stones whose own ring is covered: the median one of the others. */
function typicalBackground(found: readonly (Background | null)[]): Background | null {
  const known = found.filter((background) => background !== null).sort((a, b) => meanOf(a.rgb) - meanOf(b.rgb));
  return known[Math.floor(known.length / 2)] ?? null;
}

function lookAt(photograph: Photograph, discs: readonly Disc[]): (SeenDisc | null)[] {
  const backgrounds = discs.map((disc, i) => backgroundAbout(photograph, disc, discs.filter((_, k) => k !== i)));
  const typical = typicalBackground(backgrounds);
  return discs.map((disc, i) => {
    const light = measureDisc(photograph, { ...disc, radius: MARK_INNER * disc.radius });
    const background = backgrounds[i] ?? typical ?? UNKNOWN_BACKGROUND;
    return light === null ? null : { light, background };
  });
}

/** Standard error of the logarithm of a ratio of means, by leaving out one sector at a time (jackknife). */
function sectorError(long: SeenDisc, short: SeenDisc): number {
  const [under, over] = [meanOf(long.background.rgb), meanOf(short.background.rgb)];
  const total = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0);
  const [allLong, allShort] = [total(long.light.sectors), total(short.light.sectors)];
  const without = Array.from({ length: SECTORS }, (_, i) => {
    const l = (allLong - long.light.sectors[i]!) / (SECTORS - 1) - under;
    const s = (allShort - short.light.sectors[i]!) / (SECTORS - 1) - over;
    return l > 0 && s > 0 ? Math.log(s / l) : null;
  }).filter((value) => value !== null);
  if (without.length < SECTORS) return 1;
  const mean = without.reduce((sum, value) => sum + value, 0) / SECTORS;
  return Math.sqrt((SECTORS - 1) / SECTORS * without.reduce((sum, value) => sum + (value - mean) ** 2, 0));
}

type Ratio = Pick<PairStone, 'logRatio' | 'logRatioError' | 'bound'>;

function ratioOf(long: SeenDisc, short: SeenDisc, longWave: MarkLight, shortWave: MarkLight, stops: number): Ratio {
  const unclear = (lamp: MarkLight): boolean => lamp.state !== 'measured';
  if (unclear(longWave) && unclear(shortWave) && !(longWave.state === 'dark' && shortWave.state === 'clipped') && !(longWave.state === 'clipped' && shortWave.state === 'dark')) {
    return { logRatio: null, logRatioError: null, bound: 'none' };
  }
  const floor = (lamp: MarkLight): number => (lamp.state === 'dark' ? Math.max(lamp.brightness, 0) + DARK_BELOW * lamp.error : lamp.brightness);
  const logRatio = Math.log(floor(shortWave) / floor(longWave)) - stops * Math.LN2;
  const bound = longWave.state === 'dark' || shortWave.state === 'clipped' ? 'at-least' : shortWave.state === 'dark' || longWave.state === 'clipped' ? 'at-most' : 'none';
  const relative = (lamp: MarkLight): number => lamp.error / floor(lamp);
  return { logRatio, logRatioError: Math.hypot(relative(longWave), relative(shortWave), bound === 'none' ? sectorError(long, short) : 0), bound };
}

/** Whether the brightest places of a photograph show anything at all. */
function isBlack(photograph: Photograph): boolean {
  const { data } = brightnessGrid(photograph, 300);
  return data.slice().sort()[Math.floor(0.995 * (data.length - 1))]! < LEAST_LIGHT;
}

/**
 * Compares a piece under long-wave and short-wave ultraviolet, stone by stone: the photographs are laid on one another, the stray
 * light about each stone is taken off, the exposure is compensated, and the stones are held against the rest of the piece.
 * Ratios are relative: lamps differ in strength, so only the difference between stones of one piece means something.
 */
export function comparePair({ longWave, shortWave, marks, stops, stopsFrom }: PairInput): Result<PairResult, PairRefusal> {
  if (marks.length === 0) return err({ code: 'no-marks' });
  if (longWave.width !== shortWave.width || longWave.height !== shortWave.height) return err({ code: 'sizes-differ' });
  if (isBlack(longWave)) return err({ code: 'black-frame', lamp: 'long-wave' });
  if (isBlack(shortWave)) return err({ code: 'black-frame', lamp: 'short-wave' });
  const { width, height } = longWave;
  const [gridLong, gridShort] = [brightnessGrid(longWave, ALIGN_DEFAULTS.longSide), brightnessGrid(shortWave, ALIGN_DEFAULTS.longSide)];
  const laid = alignPair(gridLong, gridShort, Math.max(1, Math.ceil(Math.max(width, height) / ALIGN_DEFAULTS.longSide)));
  if (!laid.ok) return laid;

  const discs = marks.map(({ x, y, radius }) => ({ x: x * width - 0.5, y: y * height - 0.5, radius: radius * width }));
  const place = placer(laid.value.placement, width, height);
  const moved = discs.map(({ x, y, radius }) => { const [mx, my] = place(x, y); return { x: mx, y: my, radius }; });
  const [underLong, underShort] = [lookAt(longWave, discs), lookAt(shortWave, moved)];
  const outside: number[] = [];
  const measured = marks.flatMap((mark, i) => {
    const [long, short] = [underLong[i], underShort[i]];
    if (!long || !short) { outside.push(mark.number); return []; }
    const [lampLong, lampShort] = [measureMark(long), measureMark(short)];
    return [{ markId: mark.id, number: mark.number, stoneId: mark.stoneId, x: mark.x, y: mark.y, radius: mark.radius, longWave: lampLong, shortWave: lampShort, ...ratioOf(long, short, lampLong, lampShort, stops) }];
  });
  const scores = robustScores(measured.flatMap(({ logRatio, bound }) => (logRatio === null || bound !== 'none' ? [] : [logRatio])));
  const stones = measured.map((stone): PairStone => {
    const score = scores === null || stone.logRatio === null ? null : scores.score(stone.logRatio, stone.logRatioError ?? 0);
    // A bound stands out only on its open side: "at least" above the rest, "at most" below it.
    const standsOut = score !== null && Math.abs(score) >= STANDS_OUT_FROM && (stone.bound === 'none' || (stone.bound === 'at-least' ? score > 0 : score < 0));
    return { ...stone, score, standsOut };
  });
  const result = { version: PAIR_VERSION, alignment: laid.value, stops, stopsFrom, medianLogRatio: scores?.middle ?? null, scatter: scores?.scatter ?? null, stones, outside };
  return ok({ ...result, notes: pairNotes(result) });
}

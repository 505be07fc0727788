import { err, ok, type Result } from '../result.ts';
import { blendLines } from './blend-lines.ts';
import type { CalibrationError } from './calibration-error.ts';
import type { MeasuredLine } from './find-calibration-lines.ts';
import type { ReferenceLine, ScaleUnit } from './standard.ts';

/** How far a scale may be off before it is calibrated. */
export type ScaleLimits = { /** Unit of the scale. */ readonly offset: number; /** Relative. */ readonly slope: number };
export const SCALE_LIMITS: Readonly<Record<ScaleUnit, ScaleLimits>> = {
  nm: { offset: 3, slope: 0.01 }, 'cm-1': { offset: 15, slope: 0.01 }, 'raman-shift': { offset: 15, slope: 0.01 },
};

/** Thresholds of the assignment (judgement; measured on made lamps in the tests). */
export const ASSIGN_DEFAULTS = {
  /** Strongest lines that propose a scale, and that are assigned. */
  proposing: 14, assigned: 45,
  /** How far a line may lie from where a straight scale puts it, in line widths: leaves room for a bent scale. */
  reachWidths: 0.6,
  /** Lines that must fit. */
  leastLines: 4,
  /** Share of the strong reference lines in range that must be seen. */
  leastShare: 0.5,
  /** A second scale that fits this nearly as well makes the assignment ambiguous. */
  rivalShare: 0.85,
} as const;

export type Pair = { readonly measured: MeasuredLine; readonly reference: ReferenceLine };
/** A straight scale: reference = measured + offset + slope·(measured − middle). */
type Straight = { readonly offset: number; readonly slope: number };
type Candidate = Straight & { readonly pairs: readonly Pair[]; readonly score: number };
type Scene = { readonly lines: readonly MeasuredLine[]; readonly references: readonly ReferenceLine[]; readonly middle: number; readonly half: number; readonly limits: ScaleLimits; readonly reach: number };

const map = (scene: Scene, { offset, slope }: Straight, position: number): number => position + offset + slope * (position - scene.middle);

/** Nearest of ascending references, by bisection. */
function nearest(references: readonly ReferenceLine[], position: number): ReferenceLine {
  let [lo, hi] = [0, references.length - 1];
  while (lo < hi) {
    const middle = (lo + hi) >> 1;
    if (references[middle]!.position < position) lo = middle + 1;
    else hi = middle;
  }
  const above = references[lo]!;
  const below = references[Math.max(0, lo - 1)]!;
  return Math.abs(above.position - position) < Math.abs(below.position - position) ? above : below;
}

/** Each reference with the one measured line that lies nearest, within reach. */
export function pairUp(lines: readonly MeasuredLine[], references: readonly ReferenceLine[], expected: (position: number) => number, reach: number): Pair[] {
  const best = new Map<ReferenceLine, { line: MeasuredLine; distance: number }>();
  for (const line of lines) {
    const at = expected(line.position);
    const reference = nearest(references, at);
    const distance = Math.abs(reference.position - at);
    const held = best.get(reference);
    if (distance <= reach && (held === undefined || distance < held.distance)) best.set(reference, { line, distance });
  }
  return [...best].map(([reference, { line }]) => ({ measured: line, reference })).sort((a, b) => a.measured.position - b.measured.position);
}

/** Heights span decades: their fourth roots weigh them gently. */
const gently = (value: number, greatest: number): number => (greatest > 0 ? (value / greatest) ** 0.25 : 0);

function judge(scene: Scene, straight: Straight): Candidate {
  const { lines, references, reach } = scene;
  const pairs = pairUp(lines, references, (position) => map(scene, straight, position), reach);
  const tallest = Math.max(...lines.map((line) => line.height));
  const strongest = Math.max(...references.map((line) => line.strength));
  const seen = new Set(pairs.map((pair) => pair.reference));
  let score = 0;
  for (const { measured, reference } of pairs) {
    const off = (reference.position - map(scene, straight, measured.position)) / reach;
    score += (1 - 0.7 * off * off) * gently(measured.height, tallest) * gently(reference.strength, strongest);
  }
  const [from, to] = [map(scene, straight, scene.middle - scene.half), map(scene, straight, scene.middle + scene.half)];
  for (const reference of references) {
    if (!seen.has(reference) && reference.position > from && reference.position < to) score -= 0.3 * gently(reference.strength, strongest) ** 2;
  }
  return { ...straight, pairs, score };
}

/** Straight scales through two of the strongest lines each, and plain shifts. */
function* proposals(scene: Scene): Generator<Straight> {
  const { limits, middle, half, references } = scene;
  const strongest = [...scene.lines].sort((a, b) => b.height - a.height).slice(0, ASSIGN_DEFAULTS.proposing).sort((a, b) => a.position - b.position);
  const within = (position: number): ReferenceLine[] => references.filter((line) => Math.abs(line.position - position) <= limits.offset + limits.slope * half);
  const options = strongest.map((line) => within(line.position));
  for (let i = 0; i < strongest.length; i++) {
    for (const a of options[i]!) {
      if (Math.abs(a.position - strongest[i]!.position) <= limits.offset) yield { offset: a.position - strongest[i]!.position, slope: 0 };
      for (let j = i + 1; j < strongest.length; j++) {
        const span = strongest[j]!.position - strongest[i]!.position;
        if (span < 0.3 * half) continue;
        for (const b of options[j]!) {
          const slope = (b.position - a.position - span) / span;
          const offset = a.position - strongest[i]!.position - slope * (strongest[i]!.position - middle);
          if (Math.abs(slope) <= limits.slope && Math.abs(offset) <= limits.offset) yield { offset, slope };
        }
      }
    }
  }
}

/** Another scale is a rival where it gives most of the lines another reference. */
function differs(a: Candidate, b: Candidate): boolean {
  const held = new Map(a.pairs.map((pair) => [pair.measured, pair.reference]));
  const same = b.pairs.filter((pair) => held.get(pair.measured) === pair.reference).length;
  return same < 0.5 * Math.max(1, Math.min(a.pairs.length, b.pairs.length));
}

/** Share of the strong references in range that were found. */
function shareSeen(scene: Scene, best: Candidate): number {
  const [from, to] = [map(scene, best, scene.middle - 0.98 * scene.half), map(scene, best, scene.middle + 0.98 * scene.half)];
  const inRange = scene.references.filter((line) => line.position > from && line.position < to);
  const strongest = Math.max(0, ...inRange.map((line) => line.strength));
  const strong = inRange.filter((line) => line.strength >= 0.3 * strongest);
  const seen = new Set(best.pairs.map((pair) => pair.reference));
  return strong.length === 0 ? 0 : strong.filter((line) => seen.has(line)).length / strong.length;
}

export type Assignment = { readonly pairs: readonly Pair[]; readonly references: readonly ReferenceLine[] };

/**
 * Tells which measured line is which reference, for a scale that may be shifted and stretched within `limits`.
 * @param range first and last position of the curve, as measured
 * Errors: 'too-few-lines', 'does-not-fit' (another lamp), 'ambiguous' (two scales fit alike).
 */
export function assignLines(
  lines: readonly MeasuredLine[], standard: { readonly name: string; readonly lines: readonly ReferenceLine[] }, fwhm: number, range: readonly [number, number], limits: ScaleLimits,
): Result<Assignment, CalibrationError> {
  const references = blendLines(standard.lines, fwhm);
  const kept = [...lines].sort((a, b) => b.snr - a.snr).slice(0, ASSIGN_DEFAULTS.assigned);
  const scene: Scene = { lines: kept, references, middle: 0.5 * (range[0] + range[1]), half: 0.5 * (range[1] - range[0]), limits, reach: ASSIGN_DEFAULTS.reachWidths * fwhm };
  const { leastLines, leastShare, rivalShare } = ASSIGN_DEFAULTS;
  const candidates = [...proposals(scene)].map((straight) => judge(scene, straight)).sort((a, b) => b.score - a.score);
  const best = candidates[0];
  const none = `Fewer than ${leastLines} lines of “${standard.name}” were found`;
  if (!best || best.pairs.length < leastLines) {
    return err({ code: 'too-few-lines', message: `${none} (${best?.pairs.length ?? 0} of ${lines.length} lines in the curve fit): choose the lamp that was used, or record it over a wider range.` });
  }
  if (shareSeen(scene, best) < leastShare) {
    return err({ code: 'does-not-fit', message: `The lines in the curve do not fit “${standard.name}”: more than half of its strong lines are missing. Choose the lamp that was used; a scale off by more than ${limits.offset} must first be set at the instrument.` });
  }
  const rival = candidates.find((candidate) => candidate.score >= rivalShare * best.score && differs(best, candidate));
  if (rival) {
    return err({ code: 'ambiguous', message: `Two scales fit nearly alike (shifted by ${best.offset.toFixed(2)} and by ${rival.offset.toFixed(2)}): use a lamp with more lines in this range, or record it with less noise.` });
  }
  return ok({ pairs: best.pairs, references });
}

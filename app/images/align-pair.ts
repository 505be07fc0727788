import { z } from 'zod';
import { err, ok, type Result } from '../result.ts';
import { boxBlur } from './box-blur.ts';
import { cutPatch } from './cut-patch.ts';
import type { ComplexField } from './fft.ts';
import { fitPlacement, type Displacement, type PlacementFit } from './fit-placement.ts';
import { orientationSpectrum, shiftBetween } from './orientation-correlation.ts';
import type { BrightnessGrid } from './photograph.ts';
import { AT_REST, placement, placer, type Placement } from './placement.ts';
import { reduceGrid } from './reduce-grid.ts';

/** How two photographs are laid on one another (judgement; tried on simulated pairs). */
export const ALIGN_DEFAULTS = {
  /** Cells along the longer side of the grids that are compared. */
  longSide: 1000,
  /** Turns tried at first, degrees, on a grid of this many cells. */
  mostDegrees: 4, stepDegrees: 0.5, coarseSide: 128,
  /** Patches compared: how many at most, the coarseness of the grid at each laying, and their side in cells: larger ones where stones are so large that small ones see only an edge. */
  mostPatches: 40, steps: [3, 1, 1], patchSides: [64, 128, 256],
  /** A patch counts where its best place is this much clearer than the next. */
  leastClearness: 1.25,
  /** The pair fits where at least this many patches, and this share of those that count, agree within so many cells. */
  leastAgreeing: 8, leastShare: 0.4, agreeWithin: 1.2,
  /** More difference of size than this is another distance, not another lamp. */
  mostScale: 0.02,
} as const;

export const alignment = z.object({
  placement,
  /** Root mean square of what is left between the patches, points of the full photograph. */
  residual: z.number(),
  /** Standard error of the shift, points of the full photograph. */
  error: z.number(),
  /** Patches that agree, of those that could be compared. */
  agreeing: z.number(), compared: z.number(),
});
export type Alignment = z.infer<typeof alignment>;

export type AlignRefusal =
  | { readonly code: 'sizes-differ' }
  | { readonly code: 'does-not-fit'; readonly agreeing: number; readonly compared: number }
  | { readonly code: 'another-distance'; readonly scale: number };

/** Square grid of the middle of a photograph, for the first look. */
function coarse(grid: BrightnessGrid, place: (x: number, y: number) => readonly [number, number]): Float32Array {
  const side = ALIGN_DEFAULTS.coarseSide;
  const step = Math.max(grid.width, grid.height) / side;
  const [cx, cy] = [0.5 * (grid.width - 1), 0.5 * (grid.height - 1)];
  return cutPatch(grid, 0, 0, side, (x, y) => place(cx + step * x, cy + step * y));
}

/** First guess: the turn whose picture of directions fits best, and its shift. */
function firstGuess(a: BrightnessGrid, b: BrightnessGrid): Placement {
  const { coarseSide, mostDegrees, stepDegrees } = ALIGN_DEFAULTS;
  const step = Math.max(a.width, a.height) / coarseSide;
  const [softA, softB] = [boxBlur(a, Math.max(1, Math.round(step / 2))), boxBlur(b, Math.max(1, Math.round(step / 2)))];
  const still = orientationSpectrum(coarse(softA, (x, y) => [x, y]), coarseSide);
  let best = { clearness: -1, degrees: 0, dx: 0, dy: 0 };
  for (let degrees = -mostDegrees; degrees <= mostDegrees; degrees += stepDegrees) {
    const turned = placer({ ...AT_REST, degrees }, a.width, a.height);
    const { dx, dy, clearness } = shiftBetween(still, orientationSpectrum(coarse(softB, turned), coarseSide));
    if (clearness > best.clearness) best = { clearness, degrees, dx: step * dx, dy: step * dy };
  }
  // The shift was seen in the turned frame.
  const turn = best.degrees * Math.PI / 180;
  return { dx: Math.cos(turn) * best.dx - Math.sin(turn) * best.dy, dy: Math.sin(turn) * best.dx + Math.cos(turn) * best.dy, degrees: best.degrees, scale: 1 };
}

/** Middles of the patches where brightness changes most: there is something to hold on to. */
function patchMiddles(a: BrightnessGrid, patchSide: number): (readonly [number, number])[] {
  const { mostPatches } = ALIGN_DEFAULTS;
  const half = patchSide / 2;
  const found: { x: number; y: number; rise: number }[] = [];
  for (let y = half; y <= a.height - half; y += half) {
    for (let x = half; x <= a.width - half; x += half) {
      let rise = 0;
      for (let j = y - half + 1; j < y + half - 1; j += 2) {
        for (let i = x - half + 1; i < x + half - 1; i += 2) rise += Math.abs(a.data[j * a.width + i + 1]! - a.data[j * a.width + i - 1]!) + Math.abs(a.data[(j + 1) * a.width + i]! - a.data[(j - 1) * a.width + i]!);
      }
      found.push({ x, y, rise });
    }
  }
  return found.sort((p, q) => q.rise - p.rise || p.y - q.y || p.x - q.x).slice(0, mostPatches).map(({ x, y }) => [x, y] as const);
}

/** Both grids at one coarseness, with the patches of the first ready to be compared. */
type Level = { readonly step: number; readonly patchSide: number; readonly a: BrightnessGrid; readonly b: BrightnessGrid; readonly patches: readonly { readonly x: number; readonly y: number; readonly still: ComplexField }[] };

function levelOf(fineA: BrightnessGrid, fineB: BrightnessGrid, step: number, patchSide: number): Level {
  const [a, b] = [reduceGrid(fineA, step), reduceGrid(fineB, step)];
  const patches = patchMiddles(a, patchSide).map(([x, y]) => ({ x, y, still: orientationSpectrum(cutPatch(a, x, y, patchSide, (u, v) => [u, v]), patchSide) }));
  return { step, patchSide, a, b, patches };
}

/** Compares every patch where the placement so far puts it, and fits anew. Placements are in cells of the finest grid. */
function layAgain({ step, patchSide, a, b, patches }: Level, before: Placement): PlacementFit {
  const { leastClearness, agreeWithin } = ALIGN_DEFAULTS;
  const start = { ...before, dx: before.dx / step, dy: before.dy / step };
  const place = placer(start, a.width, a.height);
  const seen: Displacement[] = [];
  for (const { x, y, still } of patches) {
    const { dx, dy, clearness } = shiftBetween(still, orientationSpectrum(cutPatch(b, x, y, patchSide, place), patchSide));
    if (!(clearness >= leastClearness)) continue;
    // The second's patch was cut where the placement puts it: what is left is a shift in the first's frame.
    const [toX, toY] = place(x + dx, y + dy);
    seen.push({ x, y, toX, toY, weight: Math.min(4, clearness) });
  }
  const fit = fitPlacement(seen, a.width, a.height, agreeWithin, start);
  return { ...fit, placement: { ...fit.placement, dx: step * fit.placement.dx, dy: step * fit.placement.dy } };
}

function lay(a: BrightnessGrid, b: BrightnessGrid, patchSide: number, guess: PlacementFit): PlacementFit {
  let fit = guess;
  let level: Level | null = null;
  for (const step of ALIGN_DEFAULTS.steps) {
    if (patchSide * step > Math.min(a.width, a.height)) continue;
    if (level?.step !== step) level = levelOf(a, b, step, patchSide);
    fit = layAgain(level, fit.placement);
  }
  return fit;
}

/**
 * Lays the second photograph on the first: a shift, a small turn and the size as a check, from patches compared one by one,
 * fitted so that those that disagree do not count.
 * @param a, b brightness grids of the same size, `cell` points of the photograph to a cell
 */
export function alignPair(a: BrightnessGrid, b: BrightnessGrid, cell: number): Result<Alignment, AlignRefusal> {
  if (a.width !== b.width || a.height !== b.height) return err({ code: 'sizes-differ' });
  const { leastAgreeing, leastShare, mostScale } = ALIGN_DEFAULTS;
  const guess: PlacementFit = { placement: firstGuess(a, b), residual: Infinity, agreeing: 0, compared: 0 };
  let fit = guess;
  for (const patchSide of ALIGN_DEFAULTS.patchSides) {
    if (patchSide > Math.min(a.width, a.height)) break;
    const tried = lay(a, b, patchSide, guess);
    if (tried.agreeing > fit.agreeing || fit.agreeing < leastAgreeing) fit = tried;
    if (fit.agreeing >= 2 * leastAgreeing && fit.agreeing >= leastShare * fit.compared) break;
  }
  const current = fit.placement;
  if (fit.agreeing < leastAgreeing || fit.agreeing < leastShare * fit.compared) return err({ code: 'does-not-fit', agreeing: fit.agreeing, compared: fit.compared });
  if (Math.abs(current.scale - 1) > mostScale) return err({ code: 'another-distance', scale: current.scale });
  const residual = cell * fit.residual;
  return ok({
    placement: { ...current, dx: cell * current.dx, dy: cell * current.dy }, residual,
    error: residual / Math.sqrt(Math.max(1, fit.agreeing - 2)), agreeing: fit.agreeing, compared: fit.compared,
  });
}

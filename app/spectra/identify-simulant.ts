import type { Simulant } from '../reference/reference-lines.ts';
import { SIMULANT_TOLERANCE_CM1, SIMULANTS } from '../reference/reference-lines.ts';

/** A line on the Raman-shift scale, cm-1; `line` is its place in the caller's list. */
export type ShiftLine = { readonly line: number; readonly shiftCm1: number; readonly height: number; readonly snr: number };
export type SimulantMatch = { readonly simulant: Simulant; readonly found: readonly { readonly line: number; readonly shiftCm1: number; readonly referenceCm1: number }[] };

/** Weaker lines, against the strongest of the curve, do not speak for a material. */
const LEAST_SHARE = 0.05;
const LEAST_SNR = 10;

/**
 * The imitation whose strongest Raman line is the strongest seen, with all of its first two lines (where it has two and they are covered).
 * range: covered shifts, cm-1; least: lines that must be found. Null where none fits.
 */
export function identifySimulant(lines: readonly ShiftLine[], range: readonly [number, number], least = 1): SimulantMatch | null {
  const clear = lines.filter((line) => line.snr >= LEAST_SNR && line.shiftCm1 > 100 && line.shiftCm1 < 1250);
  const strongest = Math.max(...clear.map((line) => line.height));
  let best: SimulantMatch | null = null;
  for (const simulant of SIMULANTS) {
    const covered = simulant.linesCm1.filter((shift) => shift > range[0] + 10 && shift < range[1] - 10);
    if (covered.length < Math.min(2, simulant.linesCm1.length)) continue;
    const found: { line: number; shiftCm1: number; referenceCm1: number }[] = [];
    let lead = 0;
    for (const reference of covered) {
      const line = clear.find((c) => Math.abs(c.shiftCm1 - reference) <= SIMULANT_TOLERANCE_CM1 && c.height >= LEAST_SHARE * strongest);
      if (!line) continue;
      found.push({ line: line.line, shiftCm1: line.shiftCm1, referenceCm1: reference });
      lead = Math.max(lead, line.height);
    }
    if (found.length < Math.max(least, Math.min(2, covered.length)) || lead < 0.8 * strongest) continue;
    if (best === null || found.length > best.found.length) best = { simulant, found };
  }
  return best;
}

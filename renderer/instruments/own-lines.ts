import type { CalibrationStandard } from '../../app/calibration/standard.ts';

export type OwnLine = { readonly position: number; readonly uncertainty: number };
export type OwnLines = { readonly lines: readonly OwnLine[] | null; readonly error: string | null };

/** The positions of a standard as they stand in the field to be corrected: one in a line. */
export const linesAsText = (standard: CalibrationStandard): string => standard.lines.map((line) => String(line.position)).join('\n');

const LEAST = 4;

/** Positions as typed, one in a line, decimal point or comma; the uncertainty behind a blank, else `usual`. Null lines while something is wrong. */
export function readOwnLines(text: string, usual: number): OwnLines {
  const rows = text.split('\n').map((row) => row.trim()).filter((row) => row !== '');
  const lines: OwnLine[] = [];
  for (const row of rows) {
    const [position, uncertainty = usual, ...more] = row.replaceAll(',', '.').split(/[\s;±]+/).filter(Boolean).map(Number);
    if (position === undefined || !(position > 0) || !(uncertainty > 0) || more.length > 0) return { lines: null, error: `“${row}” is no position: write one number in a line, and its uncertainty behind it where you have one.` };
    lines.push({ position, uncertainty });
  }
  return lines.length < LEAST ? { lines: null, error: `At least ${LEAST} positions are needed.` } : { lines, error: null };
}

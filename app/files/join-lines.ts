import { ok, type Result } from '../result.ts';
import { CHECK_TOLERANCES } from './reader-defaults.ts';
import { refusal } from './refusal.ts';
import type { DataLine, ScannedTable } from './scan-table.ts';
import type { ReadError, ReadWarning } from './spectrum-file.ts';

/** The ordinates of a table in one piece (NaN where the file says "?"), and the point at which each line begins. */
export type JoinedOrdinates = {
  readonly y: Float64Array;
  readonly firstPoint: Int32Array;
  readonly warnings: readonly ReadWarning[];
};

type Overlap = { readonly line: DataLine; readonly before: number; readonly again: number };

const same = (a: number, b: number): boolean => Object.is(a, b) || Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));

function overlapAt(table: ScannedTable, k: number): Overlap {
  const line = table.lines[k]!;
  return { line, before: table.ordinates[line.start - 1]!, again: table.ordinates[line.start]! };
}

/** Joins the lines; where `repeated(k)`, line k's first ordinate repeats the point before it and is not stored twice. */
function join(table: ScannedTable, repeated: (k: number) => boolean): { y: Float64Array; firstPoint: Int32Array } {
  const y = new Float64Array(table.ordinates.length);
  const firstPoint = new Int32Array(table.lines.length);
  let n = 0;
  table.lines.forEach((line, k) => {
    const skip = repeated(k) ? 1 : 0;
    firstPoint[k] = n - skip;
    y.set(table.ordinates.subarray(line.start + skip, line.start + line.count), n);
    n += line.count - skip;
  });
  return { y: y.slice(0, n), firstPoint };
}

function checkWarning(failed: readonly Overlap[]): ReadWarning {
  const f = failed[0]!;
  const more = failed.length > 1 ? ` (and ${failed.length - 1} more)` : '';
  return {
    code: 'y-check', line: f.line.line,
    message: `The check value ${f.again} does not repeat the ordinate ${f.before} before it${more}: a digit of the previous line or of the check is wrong. Compare with the instrument.`,
  };
}

/**
 * Applies the Y check of difference tables: after a line that ends in a difference, the next line's first ordinate must be the
 * same value again. Tables that never repeat it, or that repeat it without differences, are recognised by NPOINTS.
 * Errors: 'y-check' where most checks fail.
 */
export function joinLines(table: ScannedTable, points: number | undefined): Result<JoinedOrdinates, ReadError> {
  const { lines, ordinates } = table;
  const after = lines.map((_, k) => k > 0 && lines[k - 1]!.endsInDifference);
  const overlaps = lines.flatMap((_, k) => (after[k] ? [overlapAt(table, k)] : []));
  const failed = overlaps.filter((o) => !same(o.before, o.again));
  const distrusted = failed.length > CHECK_TOLERANCES.failedYChecks * overlaps.length;
  if (overlaps.length > 0 && distrusted && ordinates.length === points) {
    const warning = { code: 'y-check-absent', message: 'The lines do not repeat their last ordinate, so the differences could not be checked.', line: failed[0]!.line.line };
    return ok({ ...join(table, () => false), warnings: [warning] });
  }
  if (distrusted && overlaps.length >= 4) {
    return refusal('y-check', `${failed.length} of ${overlaps.length} check values do not fit the ordinates before them, first here (${failed[0]!.again} where ${failed[0]!.before} is expected). The file is damaged; export it again.`, failed[0]!.line.line);
  }
  if (overlaps.length > 0) return ok({ ...join(table, (k) => after[k]!), warnings: failed.length > 0 ? [checkWarning(failed)] : [] });

  const surplus = points === undefined ? 0 : ordinates.length - points;
  if (surplus > 0 && surplus === lines.length - 1 && lines.every((_, k) => k === 0 || repeats(table, k))) {
    const warning = { code: 'repeated-ordinate', message: 'Each line repeats the last ordinate of the line before; the repetition was left out.', line: lines[1]!.line };
    return ok({ ...join(table, (k) => k > 0), warnings: [warning] });
  }
  const end = lines.length - 1;
  if (surplus === 1 && end > 0 && lines[end]!.count === 1 && repeats(table, end)) {
    return ok({ ...join(table, (k) => k === end), warnings: [] });
  }
  return ok({ ...join(table, () => false), warnings: [] });
}

function repeats(table: ScannedTable, k: number): boolean {
  const o = overlapAt(table, k);
  return same(o.before, o.again);
}

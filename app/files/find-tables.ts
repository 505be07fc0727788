import { ok, type Result } from '../result.ts';
import { parseRow, splitFields, type Dialect } from './delimiter-dialect.ts';
import { parseNumber } from './parse-number.ts';
import { FILE_LIMITS } from './reader-defaults.ts';
import { excerpt, refusal } from './refusal.ts';
import type { ReadError } from './spectrum-file.ts';

/** One unbroken table of numbers: its columns, the line of each row, and the index of the first line that belongs to its header. */
export type TextTable = {
  readonly columns: readonly Float64Array[];
  readonly lineOf: Int32Array;
  readonly headerFrom: number;
};

/** Rows that follow each other without anything but comments between them. */
type Run = { rows: number[][]; at: number[]; gap: 'start' | 'blank' | 'text'; gapLine: number };

/** Runs of at most this many rows above the table are numbers of the header. */
const HEADER_ROWS = 2;
/** A row this many point distances away still belongs to the same scan. */
const NEAR_STEPS = 5;

/** A remark line that may stand among data; "####" is a number too wide for its field, not a remark. */
const isRemark = (line: string): boolean => /^(?:#(?![#\d])|%(?!\d)|!|\/\/)/.test(line.trimStart());

/** Number of columns that most rows have. */
function usualWidth(rows: readonly (number[] | undefined)[]): number {
  const counts = new Map<number, number>();
  for (const row of rows) if (row) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  let width = 0;
  for (const [w, n] of counts) if (n > (counts.get(width) ?? 0)) width = w;
  return width;
}

const firstX = (run: Run): number => run.rows[0]![0]!;
const lastX = (run: Run): number => run.rows.at(-1)![0]!;
const directionOf = (run: Run): number => Math.sign(lastX(run) - firstX(run));
const stepOf = (run: Run): number => Math.abs(lastX(run) - firstX(run)) / Math.max(1, run.rows.length - 1);

function collectRuns(lines: readonly string[], rows: readonly (number[] | undefined)[], width: number): Run[] {
  const runs: Run[] = [];
  let open: Run | undefined;
  let gap: Run['gap'] = 'start';
  let gapLine = -1;
  for (let i = 0; i < lines.length; i += 1) {
    const row = rows[i];
    if (row?.length === width) {
      if (!open || gap !== 'start') {
        const continues: boolean = open !== undefined && gap === 'blank' && (directionOf(open) === 0 || (row[0]! - lastX(open)) * directionOf(open) > 0);
        if (!continues) {
          open = { rows: [], at: [], gap: open ? gap : 'start', gapLine };
          runs.push(open);
        }
      }
      open!.rows.push(row);
      open!.at.push(i);
      gap = 'start';
      gapLine = -1;
    } else if (lines[i]!.trim() === '') {
      if (gap === 'start') gap = 'blank';
    } else if (!isRemark(lines[i]!) && gap !== 'text') {
      gap = 'text';
      gapLine = i;
    }
  }
  return runs;
}

function brokenLine(lines: readonly string[], index: number, width: number): ReturnType<typeof refusal> {
  return refusal('broken-line', `a line of data can't be read as ${width} numbers (“${excerpt(lines[index]!)}”). The file is damaged; export it again.`, index + 1);
}

/** True where the line begins with a number that would be the neighbour of x in the scan, on the side that `side` (±1, 0 for either) tells. */
function isNeighbour(line: string, x: number, step: number, side: number, dialect: Dialect): boolean {
  const value = parseNumber(splitFields(line, dialect.separator)[0] ?? '', dialect.decimalComma);
  return value !== undefined && value !== x && (side === 0 || Math.sign(value - x) === side) && Math.abs(value - x) <= NEAR_STEPS * step;
}

/** A line right above the first row that is a damaged row and not the last line of the header. */
function brokenAbove(lines: readonly string[], run: Run, width: number, dialect: Dialect): number | undefined {
  let i = run.at[0]! - 1;
  while (i >= 0 && lines[i]!.trim() === '') i -= 1;
  if (i < 0 || isRemark(lines[i]!)) return undefined;
  const fields = splitFields(lines[i]!, dialect.separator);
  // A line with the number of points is a usual header.
  if (fields.length === 1 && parseNumber(fields[0]!) === run.rows.length) return undefined;
  if (isNeighbour(lines[i]!, firstX(run), stepOf(run), -directionOf(run), dialect)) return i;
  const numbers = fields.filter((f) => parseNumber(f, dialect.decimalComma) !== undefined).length;
  const spoilt = fields.some((f) => /^[+-]?[\d.,]*\d[\d.,]*$|^nan$|^#+$/i.test(f) && parseNumber(f, dialect.decimalComma) === undefined);
  return fields.length === width && numbers === width - 1 && spoilt ? i : undefined;
}

/** Rows needed before the first can be called a stranger, and how many usual steps away it then stands. */
const STRAY = { leastRows: 20, steps: 20 } as const;

/** The first row where its x is far from a scan that is even otherwise: numbers of the header that stand right above the table. */
function strayFirstRow(run: Run): number | undefined {
  if (run.rows.length < STRAY.leastRows) return undefined;
  const steps = run.rows.slice(1).map((row, i) => Math.abs(row[0]! - run.rows[i]![0]!));
  const usual = [...steps].sort((a, b) => a - b)[steps.length >> 1]!;
  const rest = Math.max(...steps.slice(1, 1000));
  return usual > 0 && rest <= NEAR_STEPS * usual && steps[0]! > STRAY.steps * usual ? run.at[0] : undefined;
}

/** A line below the last row that is a damaged or unfinished row and not a footer. */
function brokenBelow(lines: readonly string[], run: Run, dialect: Dialect): number | undefined {
  for (let i = run.at.at(-1)! + 1; i < lines.length; i += 1) {
    const line = lines[i]!;
    if (line.trim() === '' || isRemark(line)) continue;
    if (isNeighbour(line, lastX(run), stepOf(run), directionOf(run), dialect)) return i;
    const first = parseNumber(splitFields(line, dialect.separator)[0] ?? '', dialect.decimalComma);
    if (first !== undefined && !/[a-z]{2}/i.test(line)) return i;
    if (/^\s*[+-]?\d[\d.,\s;eE+-]*$/.test(line)) return i;
  }
  return undefined;
}

/** Runs that are tables; refuses where a gap is a damaged line inside one scan. */
function separateTables(lines: readonly string[], runs: readonly Run[], width: number): Result<Run[], ReadError> {
  const largest = runs.reduce((a, b) => (b.rows.length > a.rows.length ? b : a));
  const tables: Run[] = [];
  for (let k = 0; k < runs.length; k += 1) {
    const run = runs[k]!;
    const next = runs[k + 1];
    const near = next ? Math.abs(firstX(next) - lastX(run)) <= NEAR_STEPS * Math.max(stepOf(run), stepOf(next)) : false;
    const header = run !== largest && run.rows.length <= HEADER_ROWS && tables.length === 0 && !near;
    if (header) continue;
    tables.push(run);
    if (!next) continue;
    const onward = directionOf(run) === 0 || (firstX(next) - lastX(run)) * directionOf(run) > 0;
    const gapStartsLikeData = next.gap === 'text' && /^\s*[+-]?[\d.]/.test(lines[next.gapLine]!);
    if (next.gap === 'text' && (onward || gapStartsLikeData)) return brokenLine(lines, next.gapLine, width);
    if (next.rows.length <= HEADER_ROWS) {
      return refusal('stray-rows', `after the table a few numbers stand apart (“${excerpt(lines[next.at[0]!]!)}”), as if lines were lost or two files were joined. Export the spectrum again.`, next.at[0]! + 1);
    }
  }
  return ok(tables);
}

function toTable(run: Run, width: number, headerFrom: number): TextTable {
  const columns = Array.from({ length: width }, (_, c) => Float64Array.from(run.rows, (row) => row[c]!));
  return { columns, lineOf: Int32Array.from(run.at, (i) => i + 1), headerFrom };
}

/**
 * The tables of numbers in a text, read in one dialect. Every line between the first and the last row must be a row of the
 * same width, a remark or empty; another table may follow where its x starts again.
 * Errors: 'broken-line', 'stray-rows', 'too-few-points', 'curves-in-rows', 'too-many-columns'.
 */
export function findTables(lines: readonly string[], dialect: Dialect): Result<TextTable[], ReadError> {
  const rows = lines.map((line) => parseRow(line, dialect));
  const width = usualWidth(rows);
  const runs = collectRuns(lines, rows, width);
  const tables = separateTables(lines, runs, width);
  if (!tables.ok) return tables;
  const count = tables.value.reduce((n, t) => n + t.rows.length, 0);
  const first = tables.value[0]!;
  const last = tables.value.at(-1)!;
  const above = brokenAbove(lines, first, width, dialect);
  if (above !== undefined) return brokenLine(lines, above, width);
  const stray = strayFirstRow(first);
  if (stray !== undefined) return refusal('stray-rows', `the first numbers stand far from the rest (“${excerpt(lines[stray]!)}”), as if they belonged to the header or lines were lost. Export the spectrum again.`, stray + 1);
  const below = brokenBelow(lines, last, dialect);
  if (below !== undefined) return brokenLine(lines, below, width);
  if (count < 2 || first.rows.length < 2) return refusal('too-few-points', 'the file has only one row of numbers, which is no spectrum. Export it again.', first.at[0]! + 1);
  if (width > FILE_LIMITS.maxColumns) return refusal('too-many-columns', `the table has ${width} columns. Export fewer curves at a time, one column each.`, first.at[0]! + 1);
  if (width > 8 && first.rows.length <= 3) return refusal('curves-in-rows', 'the curves seem to stand in rows. Export them in columns: one line for each point.', first.at[0]! + 1);
  let headerFrom = 0;
  return ok(tables.value.map((run) => {
    const table = toTable(run, width, headerFrom);
    headerFrom = run.at.at(-1)! + 1;
    return table;
  }));
}

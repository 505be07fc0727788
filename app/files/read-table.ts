import { ok, type Result } from '../result.ts';
import { checkAxis } from './check-axis.ts';
import { checkCounts } from './check-counts.ts';
import { checkOrdinates } from './check-ordinates.ts';
import { joinLines } from './join-lines.ts';
import type { TableForm } from './jcamp-form.ts';
import type { TableHeader } from './jcamp-header.ts';
import { FILE_LIMITS } from './reader-defaults.ts';
import { readGroups } from './read-groups.ts';
import { refusal } from './refusal.ts';
import { resolveGrid, type Grid, type GridLine } from './resolve-grid.ts';
import { scanTable } from './scan-table.ts';
import type { ReadError, ReadWarning } from './spectrum-file.ts';
import type { TableSource } from './table-source.ts';

/** The points of a table after factors, in the file's order. */
export type TablePoints = { readonly x: Float64Array; readonly y: Float64Array; readonly warnings: readonly ReadWarning[] };

/** Most ordinates a table may expand to: what NPOINTS promises with room for repeated ordinates, so that a damaged repeat count can't fill the memory. */
function expansionLimit(header: TableHeader): number {
  const said = header.points?.value;
  return Math.min(FILE_LIMITS.maxPoints, said === undefined ? 1_000_000 : 2 * said + 1000);
}

/** A table of one point a line is uneven, and not misprinted, where more than this share of its X leave the grid. */
const UNEVEN_SHARE = 0.1;

const commaWarning = (line: number): ReadWarning => ({ code: 'decimal-comma', message: 'The table is written with decimal commas, which JCAMP-DX does not know; they were read as such.', line });

/** The x of one-point lines, where these and not an even grid are the axis; undefined where they can't be. */
function unevenAxis(lines: readonly GridLine[], header: TableHeader, n: number): Float64Array | undefined {
  const near = (x: number, said: { value: number; digit: number } | undefined, digit: number): boolean =>
    said === undefined || Math.abs(x - said.value) <= 1.05 * (said.digit + digit);
  if (lines.length !== n || lines.some((l) => l.count !== 1 || l.endsInDifference)) return undefined;
  if (header.points !== undefined && header.points.value !== n) return undefined;
  const x = Float64Array.from(lines, (l) => l.x * header.xFactor);
  const digit = lines[0]!.xDigit * Math.abs(header.xFactor);
  if (!near(x[0]!, header.firstX, digit) || !near(x[n - 1]!, header.lastX, digit)) return undefined;
  return checkAxis(x, (i) => lines[i]!.line).ok ? x : undefined;
}

function gridAxis(grid: Grid, n: number, last: number | undefined): Float64Array {
  const x = new Float64Array(n);
  for (let i = 0; i < n; i += 1) x[i] = grid.first + i * grid.step;
  // first + (n − 1)·step differs from LASTX in the last bits
  if (last !== undefined && Math.abs(x[n - 1]! - last) < 1e-9 * Math.max(Math.abs(grid.first), Math.abs(last))) x[n - 1] = last;
  return x;
}

/**
 * Leaves out the points that the file marks as invalid ("?"), a mark of the standard's own: refusing a correct file would be
 * wrong, and a made-up ordinate worse. The x of the other points is not touched.
 */
function withoutInvalid(points: TablePoints, line: number): TablePoints {
  const kept = points.y.reduce((n, v) => n + (Number.isNaN(v) ? 0 : 1), 0);
  const gaps = points.y.length - kept;
  if (gaps === 0) return points;
  const x = points.x.filter((_, i) => !Number.isNaN(points.y[i]!));
  const y = points.y.filter((v) => !Number.isNaN(v));
  const message = `The file marks ${gaps === 1 ? 'one ordinate' : `${gaps} ordinates`} as invalid (“?”); the curve has a gap there.`;
  return { x, y, warnings: [...points.warnings, { code: 'invalid-ordinate', message, line }] };
}

/** The abscissae of an even table, or those of its lines where they are not even; with the count checked. */
function evenAxis(source: TableSource, lines: readonly GridLine[], n: number): Result<{ x: Float64Array; warnings: readonly ReadWarning[] }, ReadError> {
  const { header } = source;
  const counts = checkCounts(header.points, n, source.complete, lines.at(-1)!.line);
  if (!counts.ok && !source.complete) return counts;
  const grid = resolveGrid(header, n, lines);
  // The grid names the line at which points were lost, the count only the end of the table.
  if (!counts.ok) return !grid.ok && grid.error.code === 'points-lost' ? grid : counts;
  const uneven = !grid.ok || grid.value.offShare > UNEVEN_SHARE ? unevenAxis(lines, header, n) : undefined;
  if (uneven) {
    const warning = { code: 'uneven-x', message: 'The points are not evenly spaced, although the table says so; the abscissae of the lines were taken.', line: source.line };
    return ok({ x: uneven, warnings: [...counts.value, warning] });
  }
  return grid.ok ? ok({ x: gridAxis(grid.value, n, header.lastX?.value), warnings: [...counts.value, ...grid.value.warnings] }) : grid;
}

function readEven(source: TableSource): Result<TablePoints, ReadError> {
  const { header } = source;
  const table = scanTable(source.lines, expansionLimit(header));
  if (!table.ok) return table;
  const joined = joinLines(table.value, header.points?.value);
  if (!joined.ok) return joined;
  const lines: GridLine[] = table.value.lines.map((l, k) => ({ ...l, point: joined.value.firstPoint[k]! }));
  const axis = evenAxis(source, lines, joined.value.y.length);
  if (!axis.ok) return axis;
  const warnings = [...joined.value.warnings, ...axis.value.warnings];
  if (table.value.decimalComma) warnings.push(commaWarning(source.line));
  if (header.missingFactors.length > 0) {
    warnings.push({ code: 'factor-missing', message: `${header.missingFactors.map((f) => `##${f}=`).join(' and ')} missing; taken as 1.`, line: source.line });
  }
  return ok({ x: axis.value.x, y: joined.value.y.map((v) => v * header.yFactor), warnings });
}

function endWarning(header: TableHeader, x: Float64Array): ReadWarning[] {
  const differs = (said: TableHeader['firstX'], found: number): said is NonNullable<TableHeader['firstX']> =>
    said !== undefined && Math.abs(said.value - found) > 1.05 * said.digit + 1e-6 * Math.abs(found);
  const warnings: ReadWarning[] = [];
  if (differs(header.firstX, x[0]!)) warnings.push({ code: 'firstx', message: `##FIRSTX says ${header.firstX.value}, the first point is at ${x[0]}.`, line: header.firstX.line });
  if (differs(header.lastX, x.at(-1)!)) warnings.push({ code: 'lastx', message: `##LASTX says ${header.lastX.value}, the last point is at ${x.at(-1)}.`, line: header.lastX.line });
  return warnings;
}

function readPairs(source: TableSource, form: Extract<TableForm, { kind: 'groups' }>): Result<TablePoints, ReadError> {
  const { header } = source;
  const groups = readGroups(source.lines, form, header.points?.value);
  if (!groups.ok) return groups;
  const { lineOf } = groups.value;
  const n = lineOf.length;
  const x = groups.value.x.map((v) => v * header.xFactor);
  const y = groups.value.y.map((v) => v * header.yFactor);
  const warnings: ReadWarning[] = groups.value.decimalComma ? [commaWarning(source.line)] : [];
  // Some writers count the numbers instead of the pairs.
  const said = header.points?.value === 2 * n ? undefined : header.points;
  if (header.points !== undefined && said === undefined) {
    warnings.push({ code: 'npoints', message: `##NPOINTS says ${header.points.value}, the table holds ${n} pairs.`, line: header.points.line });
  } else if (header.points !== undefined || !source.peaks) {
    const counts = checkCounts(said, n, source.complete, lineOf[n - 1]!);
    if (!counts.ok) return counts;
    warnings.push(...counts.value);
  }
  if (source.peaks) return ok({ x, y, warnings });
  if (n >= 2) {
    const axis = checkAxis(x, (i) => lineOf[i]!);
    if (!axis.ok) return axis;
    warnings.push(...axis.value);
  }
  const ends = endWarning(header, x);
  if (!source.complete && said === undefined && ends.some((w) => w.code === 'lastx')) {
    return refusal('cut-off', `the data end here, before the ${header.lastX!.value} that ##LASTX promises: the file was cut off. Copy or export it again.`, lineOf[n - 1]!);
  }
  return ok({ x, y, warnings: [...warnings, ...ends] });
}

/** Reads one table completely or refuses it; what is returned is finite and, for a curve, has two points or more. */
export function readTable(source: TableSource): Result<TablePoints, ReadError> {
  const { header, form } = source;
  const read = form.kind === 'even' ? readEven(source) : readPairs(source, form);
  if (!read.ok) return read;
  const whole = read.value.y.every((v) => Number.isNaN(v) || Math.abs(v / header.yFactor - Math.round(v / header.yFactor)) < 1e-6);
  const invalidFirst = Number.isNaN(read.value.y[0]!);
  const points = withoutInvalid(read.value, source.line);
  const least = source.peaks ? 1 : 2;
  if (points.x.length < least) return refusal('too-few-points', `the table has ${points.x.length === 1 ? 'only one point' : 'no valid point'}, which is no spectrum. Export it again.`, source.line);
  if (!points.x.every(Number.isFinite) || !points.y.every(Number.isFinite)) {
    return refusal('not-finite', 'a value of the table is too large to be a number after its factor. The file is damaged; export it again.', source.line);
  }
  const checks = source.peaks ? [] : checkOrdinates(invalidFirst ? { ...header, firstY: undefined } : header, points.y, whole);
  return ok({ ...points, warnings: [...points.warnings, ...checks] });
}

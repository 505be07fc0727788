import { ok, type Result } from '../result.ts';
import { checkAxis } from './check-axis.ts';
import { chooseColumns, isCounter, type Curve } from './choose-columns.ts';
import { thousandsLine } from './check-thousands.ts';
import { chooseDialect, type Dialect } from './delimiter-dialect.ts';
import { findTables, type TextTable } from './find-tables.ts';
import { keptHeader } from './kept-header.ts';
import { CHECK_TOLERANCES, READER } from './reader-defaults.ts';
import { excerpt, refusal } from './refusal.ts';
import { resolveUnits } from './resolve-units.ts';
import type { ReadError, ReadOptions, ReadWarning, SpectrumBlock, SpectrumFile } from './spectrum-file.ts';
import { splitPairs, type PairLines } from './split-pairs.ts';
import { withoutFrame } from './without-frame.ts';
import { readTextHeader, type TextHeader } from './text-header.ts';
import { xUnitFromWords } from './unit-words.ts';

/** Why no table was found, as precisely as the lines allow. */
function noTable(lines: readonly string[]): ReturnType<typeof refusal> {
  const at = lines.findIndex((l) => /^\s*[+-]?[\d.,]*\d/.test(l));
  if (at < 0) return refusal('no-data', 'the file holds no table of numbers. Export the spectrum as JCAMP-DX or as text with two columns.');
  const single = lines.filter((l) => /^\s*[+-]?[\d.,]+(?:[eE][+-]?\d+)?\s*$/.test(l)).length;
  if (single > 2) return refusal('one-column', 'the file has one column of numbers and no abscissa. Export it with both columns.', at + 1);
  return refusal('no-data', `no two lines can be read as columns of numbers (“${excerpt(lines[at]!)}”). Numbers may have a decimal point or comma but no thousands separators; columns are set apart by tab, comma, semicolon or blanks.`, at + 1);
}

/** Commas with exactly three digits behind them could be thousands separators; they are read as decimal commas, and that is told. */
function commaWarning(lines: readonly string[], table: TextTable, dialect: Dialect): ReadWarning[] {
  if (!dialect.decimalComma) return [];
  let seen = false;
  for (const line of table.lineOf) {
    for (const [, digits] of lines[line - 1]!.matchAll(/,(\d*)/g)) {
      if (digits!.length !== 3) return [];
      seen = true;
    }
  }
  return seen ? [{ code: 'decimal-comma', message: 'Every comma has three digits behind it: read as decimal comma, not as thousands separator.', line: table.lineOf[0]! }] : [];
}

/** "400,00,1,25": decimal comma and comma as separator can't be told apart. */
function isAmbiguous(table: TextTable, dialect: Dialect): boolean {
  const [a, b, c, d] = table.columns;
  if (dialect.separator !== ',' || dialect.decimalComma || table.columns.length !== 4) return false;
  const whole = [a!, b!, c!, d!].every((col) => col.every(Number.isInteger)) && b!.every((v) => v >= 0) && d!.every((v) => v >= 0);
  return whole && a!.some((v, i) => i > 0 && v === a![i - 1]) || (whole && b!.every((v) => v === 0));
}

function checkPromised(header: TextHeader, table: TextTable): Result<ReadWarning[], ReadError> {
  const found = table.lineOf.length;
  const said = header.points;
  if (!said || said.value === found) return ok([]);
  if (said.value - found > Math.max(1, CHECK_TOLERANCES.countShare * said.value)) {
    return refusal('cut-off', `the data end here after ${found} of ${said.value} points that the header promises: the file was cut off. Copy or export it again.`, table.lineOf.at(-1)!);
  }
  return ok([{ code: 'npoints', message: `The header promises ${said.value} points, the table holds ${found}.`, line: said.line }]);
}

/** Some writers frame the data with a line that says begin and one that says end. */
function missingEnd(lines: readonly string[], first: number, last: number): ReadWarning[] {
  const framed = lines.slice(0, first).some((l) => /^\W{2,}begin\b/i.test(l.slice(0, 80)));
  if (!framed || lines.slice(last).some((l) => /^\W{2,}end\b/i.test(l.slice(0, 80)))) return [];
  return [{ code: 'missing-end', message: 'The line that ends the data is missing. Compare the last value with the instrument: the file may have been cut off there.', line: last }];
}

function stem(name: string): string {
  const base = name.split(/[\\/]/).at(-1) ?? name;
  return base.replace(/\.[A-Za-z0-9]{1,5}$/, '');
}

function readCurve(curve: Curve, table: TextTable, header: TextHeader, title: string, options: ReadOptions): Result<{ block: SpectrumBlock; warnings: ReadWarning[] }, ReadError> {
  const x = table.columns[curve.x]!;
  const y = table.columns[curve.y]!;
  const axis = checkAxis(x, (i) => table.lineOf[i]!);
  if (!axis.ok) return axis;
  const xName = header.names?.[curve.x] ?? '';
  const yName = header.names?.[curve.y] ?? '';
  const counter = isCounter(x) && xUnitFromWords(`${xName} ${header.xWords}`) === undefined;
  const xWords = counter ? 'pixel' : xUnitFromWords(xName) === undefined && header.xWords !== '' ? header.xWords : xName;
  const units = resolveUnits({ x: xWords, y: yName, yElsewhere: header.yWords, raman: false, names: true }, y, options);
  const warnings = [...axis.value, ...units.warnings];
  if (counter) warnings.push({ code: 'pixel-axis', message: 'The abscissa only counts the points: export the spectrum with its wavelengths.', line: table.lineOf[0]! });
  return ok({
    block: { title, x, y, xUnit: units.xUnit, yUnit: units.yUnit, xUnitText: counter ? xName : xWords, yUnitText: units.yWords, header: keptHeader(header.entries) },
    warnings,
  });
}

/** The name of a curve's column, with its number where several columns are named alike. */
function curveTitle(curves: readonly Curve[], curve: Curve, names: readonly string[] | undefined): string | undefined {
  const name = names?.[curve.y];
  const alike = curves.filter((c) => names?.[c.y] === name);
  return name === undefined || name === '' || alike.length === 1 ? name || undefined : `${name} · ${alike.indexOf(curve) + 1}`;
}

/** Each warning once, however many curves it concerns. */
function once(warnings: readonly ReadWarning[]): ReadWarning[] {
  return warnings.filter((w, i) => warnings.findIndex((v) => v.code === w.code && v.message === w.message) === i);
}

/**
 * Reads a text of two or more columns as instruments write it: every curve, or a refusal that names the line; nothing half-read.
 */
export function readDelimited(name: string, written: readonly string[], options: ReadOptions): Result<SpectrumFile, ReadError> {
  const lines = withoutFrame(written);
  const dialect = chooseDialect(lines);
  if (!dialect) return noTable(lines);
  const pairs = splitPairs(lines, dialect);
  return pairs ? readPairsApart(name, pairs, dialect, options) : readTables(name, lines, dialect, options);
}

/** Curves of different lengths side by side: each is read as a file of its own would be, all or none. */
function readPairsApart(name: string, pairs: readonly PairLines[], dialect: Dialect, options: ReadOptions): Result<SpectrumFile, ReadError> {
  const blocks: SpectrumBlock[] = [];
  const warnings: ReadWarning[] = [];
  for (const pair of pairs) {
    const read = readTables(name, pair.lines, dialect, options);
    if (!read.ok) return read;
    if (read.value.blocks.length !== 1) return refusal('no-data', 'a pair of columns holds no curve. Export each curve as a file of its own.');
    const [block] = read.value.blocks;
    blocks.push({ ...block!, title: pair.name === '' ? `${block!.title} · ${blocks.length + 1}` : pair.name });
    warnings.push(...read.value.warnings);
  }
  const counts = blocks.map((block) => block.x.length);
  warnings.push({ code: 'curves-of-different-lengths', message: `The curves of this file have ${counts.join(', ')} points: compare with the instrument, because rows may have been lost.` });
  return ok({ format: 'delimited-text', reader: READER, blocks, warnings: once(warnings) });
}

function readTables(name: string, lines: readonly string[], dialect: Dialect, options: ReadOptions): Result<SpectrumFile, ReadError> {
  const tables = findTables(lines, dialect);
  if (!tables.ok) return tables;
  const warnings: ReadWarning[] = [];
  const blocks: SpectrumBlock[] = [];
  for (const [t, table] of tables.value.entries()) {
    if (isAmbiguous(table, dialect)) return refusal('ambiguous-comma', 'commas seem to be both decimal marks and separators. Export with semicolons or tabs between the columns.', table.lineOf[0]!);
    const thousands = thousandsLine(lines, table, dialect);
    if (thousands !== null) return refusal('thousands-separator', `a column holds whole numbers up to 999 beside numbers like “${excerpt(lines[thousands - 1]!)}”: its marks seem to set thousands apart. Export without thousands separators.`, thousands);
    const header = readTextHeader(lines, table.headerFrom, table.lineOf[0]! - 1, table.columns.length, dialect);
    const promised = checkPromised(header, table);
    if (!promised.ok) return promised;
    const choice = chooseColumns(table.columns, header.names);
    if (header.namesUnused !== undefined) warnings.push({ code: 'names-differ', message: `A line above the table names ${header.namesUnused} columns, the table has ${table.columns.length}: the names were not used, because they can’t be told which is which.` });
    warnings.push(...promised.value, ...commaWarning(lines, table, dialect), ...choice.warnings);
    const base = header.title !== '' ? header.title : stem(name);
    const numbered = tables.value.length > 1 && header.title === '' ? `${base} · ${t + 1}` : base;
    for (const curve of choice.curves) {
      const title = choice.curves.length === 1 ? numbered : curveTitle(choice.curves, curve, header.names) ?? `${numbered} · column ${curve.y + 1}`;
      const read = readCurve(curve, table, header, title, options);
      if (!read.ok) return read;
      blocks.push(read.value.block);
      warnings.push(...read.value.warnings);
    }
  }
  warnings.push(...missingEnd(lines, tables.value[0]!.lineOf[0]! - 1, tables.value.at(-1)!.lineOf.at(-1)!));
  if (blocks.length === 0) return refusal('no-data', 'no column of the table can be a curve. Export the spectrum with abscissa and ordinate.', tables.value[0]?.lineOf[0]);
  return ok({ format: 'delimited-text', reader: READER, blocks, warnings: once(warnings) });
}

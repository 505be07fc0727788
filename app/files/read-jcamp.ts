import { ok, type Result } from '../result.ts';
import { keptHeader } from './kept-header.ts';
import { groupBlocks, recordText, type JcampBlock } from './jcamp-blocks.ts';
import { parseTableForm, type TableForm } from './jcamp-form.ts';
import { readTableHeader, recordFinder } from './jcamp-header.ts';
import { splitRecords, type JcampRecord } from './jcamp-records.ts';
import { READER } from './reader-defaults.ts';
import { ntuplesTables } from './read-ntuples.ts';
import { readTable } from './read-table.ts';
import { excerpt, refusal } from './refusal.ts';
import { resolveUnits } from './resolve-units.ts';
import { tableLines } from './scan-table.ts';
import type { ReadError, ReadOptions, ReadWarning, SpectrumBlock, SpectrumFile } from './spectrum-file.ts';
import type { TableSource } from './table-source.ts';

const CURVE_LABELS = ['XYDATA', 'XYPOINTS', 'RADATA'];
const PEAK_LABELS = ['PEAKTABLE', 'PEAKASSIGNMENTS'];
const TABLE_LABELS = new Set([...CURVE_LABELS, ...PEAK_LABELS, 'DATATABLE', 'END', 'ENDNTUPLES']);

/** The form that a label implies where the table does not say it. */
function impliedForm(label: string): TableForm {
  if (label === 'XYDATA') return { kind: 'even', x: 'X', y: 'Y' };
  return label === 'RADATA' ? { kind: 'even', x: 'R', y: 'A' } : { kind: 'groups', symbols: 'XY', arity: 2, text: false };
}

/** The form of a table and its data lines; the form may stand below the label. */
function formAndLines(record: JcampRecord, lines: readonly string[]): Result<Pick<TableSource, 'form' | 'lines'>, ReadError> {
  const onLabel = parseTableForm(record.value);
  if (onLabel) return ok({ form: onLabel.form, lines: tableLines(lines, record.from, record.to, onLabel.rest, record.line) });
  if (record.value !== '') return refusal('unknown-form', `the form “${excerpt(record.value)}” of ##${record.written}= is not known. Export the spectrum as (X++(Y..Y)) or (XY..XY).`, record.line);
  const body = tableLines(lines, record.from, record.to, '', record.line);
  const below = body[0] ? parseTableForm(body[0].text.trim()) : undefined;
  return ok(below ? { form: below.form, lines: body.slice(1) } : { form: impliedForm(record.label), lines: body });
}

function plainTable(block: JcampBlock, record: JcampRecord, lines: readonly string[]): Result<TableSource, ReadError> {
  const [x, y] = record.label === 'RADATA' ? ['R', 'A'] : ['X', 'Y'];
  const header = readTableHeader(block.records, lines, x, y);
  if (!header.ok) return header;
  const table = formAndLines(record, lines);
  if (!table.ok) return table;
  const find = recordFinder(block.records);
  const words = (label: string): string => {
    const r = find(label);
    return r ? recordText(r, lines) : '';
  };
  return ok({
    ...table.value, header: header.value, title: block.title, line: record.line,
    xUnitText: words(`${x}UNITS`), yUnitText: words(`${y}UNITS`),
    peaks: PEAK_LABELS.includes(record.label), complete: block.ended,
  });
}

/** The tables of one block. A list of peaks beside a curve is not a curve of its own: it is told and left in the raw file. */
function blockTables(block: JcampBlock, lines: readonly string[], warnings: ReadWarning[]): Result<TableSource[], ReadError> {
  if (block.records.some((r) => r.label === 'NTUPLES')) {
    const pages = ntuplesTables(block.records, lines, { title: block.title, complete: block.ended });
    if (!pages.ok || pages.value.length > 0) return pages;
  }
  const curves = block.records.filter((r) => CURVE_LABELS.includes(r.label));
  const peaks = block.records.filter((r) => PEAK_LABELS.includes(r.label));
  if (curves.length > 0 && peaks[0]) {
    warnings.push({ code: 'peak-table-left', message: 'The block also has a list of peaks, which was left in the raw file; only the curve was read.', line: peaks[0].line });
  }
  const tables: TableSource[] = [];
  for (const record of curves.length > 0 ? curves : peaks) {
    const table = plainTable(block, record, lines);
    if (!table.ok) return table;
    tables.push(table.value);
  }
  return ok(tables);
}

function readBlock(block: JcampBlock, source: TableSource, lines: readonly string[], options: ReadOptions): Result<{ block: SpectrumBlock; warnings: ReadWarning[] }, ReadError> {
  const points = readTable(source);
  if (!points.ok) return points;
  const type = block.records.find((r) => r.label === 'DATATYPE')?.value ?? '';
  const units = resolveUnits({ x: source.xUnitText, y: source.yUnitText, raman: /raman/i.test(type) }, points.value.y, options);
  const warnings = [...points.value.warnings, ...units.warnings];
  if (source.peaks) warnings.push({ code: 'peak-table', message: 'The block holds a list of peaks, not a curve.', line: source.line });
  const header = keptHeader(block.records.filter((r) => !TABLE_LABELS.has(r.label)).map((r) => [r.written, [r.value, ...lines.slice(r.from, Math.min(r.to, r.from + 12))].join('\n').trim()]));
  return ok({
    block: {
      title: source.title, x: points.value.x, y: points.value.y, xUnit: units.xUnit, yUnit: units.yUnit,
      xUnitText: source.xUnitText, yUnitText: source.yUnitText, header, ...(source.peaks ? { peaksOnly: true } : {}),
    },
    warnings,
  });
}

/**
 * Reads a JCAMP-DX 4.24 or 5.01 file (McDonald & Wilks, Appl. Spectrosc. 42 (1988) 151; Lampen et al., Pure Appl. Chem. 71
 * (1999) 1549): every curve of every block, or a refusal; nothing half-read.
 */
export function readJcamp(lines: readonly string[], options: ReadOptions): Result<SpectrumFile, ReadError> {
  const records = splitRecords(lines);
  const grouped = groupBlocks(records, lines);
  const warnings: ReadWarning[] = [...grouped.warnings];
  const blocks: SpectrumBlock[] = [];
  const data = grouped.blocks.filter((b) => !b.link || b.records.some((r) => CURVE_LABELS.includes(r.label)));
  for (const block of data) {
    const found: ReadWarning[] = [];
    const tables = blockTables(block, lines, found);
    if (!tables.ok) return tables;
    if (tables.value.length === 0) found.push({ code: 'block-without-data', message: 'The block holds no spectrum and was passed over.', line: block.line });
    for (const source of tables.value) {
      const read = readBlock(block, source, lines, options);
      if (!read.ok) return read;
      blocks.push(read.value.block);
      found.push(...read.value.warnings);
    }
    warnings.push(...(data.length > 1 ? found.map((w) => ({ ...w, message: `Block “${excerpt(block.title)}”: ${w.message}` })) : found));
  }
  if (blocks.length === 0) return refusal('no-data', 'the file has a JCAMP-DX header but no table of data. Export the spectrum again.', records.at(-1)?.line);
  return ok({ format: 'jcamp-dx', reader: READER, blocks, warnings });
}

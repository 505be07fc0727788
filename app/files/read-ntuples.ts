import { ok, type Result } from '../result.ts';
import { recordText } from './jcamp-blocks.ts';
import { parseTableForm, type TableForm } from './jcamp-form.ts';
import { checkFactor, parseHeaderNumber, type HeaderNumber } from './jcamp-header.ts';
import type { JcampRecord } from './jcamp-records.ts';
import { excerpt, refusal } from './refusal.ts';
import { tableLines } from './scan-table.ts';
import type { ReadError } from './spectrum-file.ts';
import type { TableSource } from './table-source.ts';

/** The comma-separated values of the NTUPLES records, one for each variable, by normalised label. */
type Variables = Map<string, { readonly values: readonly string[]; readonly line: number }>;

const LISTS = new Set(['VARNAME', 'SYMBOL', 'VARTYPE', 'VARFORM', 'VARDIM', 'UNITS', 'FIRST', 'LAST', 'MIN', 'MAX', 'FACTOR']);

function cell(variables: Variables, label: string, index: number): { text: string; line: number } {
  const list = variables.get(label);
  return { text: list?.values[index]?.trim() ?? '', line: list?.line ?? 0 };
}

function cellNumber(variables: Variables, label: string, index: number): HeaderNumber | undefined {
  const { text, line } = cell(variables, label, index);
  return text === '' ? undefined : parseHeaderNumber(text, line);
}

/** Splits "XY" or "F2R" into the two symbols the file defines. */
function splitSymbols(joined: string, symbols: readonly string[]): { x: number; y: number } | undefined {
  for (let cut = 1; cut < joined.length; cut += 1) {
    const x = symbols.indexOf(joined.slice(0, cut));
    const y = symbols.findIndex((s) => s !== '' && joined.slice(cut).startsWith(s));
    if (x >= 0 && y >= 0) return { x, y };
  }
  return undefined;
}

function variablesOf(form: TableForm, symbols: readonly string[]): { x: number; y: number } | undefined {
  if (form.kind === 'groups') return splitSymbols(form.symbols, symbols);
  const x = symbols.indexOf(form.x);
  const y = symbols.indexOf(form.y);
  return x >= 0 && y >= 0 ? { x, y } : undefined;
}

type Page = { readonly text: string; readonly points: HeaderNumber | undefined };

function pageTable(record: JcampRecord, lines: readonly string[], variables: Variables, page: Page, block: { title: string; complete: boolean }, firstOfSymbol: (y: number) => boolean): Result<TableSource, ReadError> {
  const head = recordText(record, lines);
  const parsed = parseTableForm(head);
  const symbols = (variables.get('SYMBOL')?.values ?? []).map((s) => s.trim().toUpperCase());
  const which = parsed ? variablesOf(parsed.form, symbols) : undefined;
  if (!parsed || !which) return refusal('unknown-form', `the form “${excerpt(head)}” of the table is not known. Export the spectrum as XYDATA.`, record.line);
  const { x, y } = which;
  for (const label of ['FACTOR', 'FIRST', 'LAST', 'VARDIM']) {
    for (const v of [x, y]) {
      const { text, line } = cell(variables, label, v);
      if (text !== '' && !parseHeaderNumber(text, line)) return refusal('header-number', `##${label}= should hold numbers and has “${excerpt(text)}”. Export the file again.`, line);
    }
  }
  const xFactor = checkFactor('FACTOR', cellNumber(variables, 'FACTOR', x));
  if (!xFactor.ok) return xFactor;
  const yFactor = checkFactor('FACTOR', cellNumber(variables, 'FACTOR', y));
  if (!yFactor.ok) return yFactor;
  const points = page.points ?? cellNumber(variables, 'VARDIM', y) ?? cellNumber(variables, 'VARDIM', x);
  const own = recordText(record, lines) === record.value ? { rest: parsed.rest, from: record.from } : { rest: '', from: firstDataLine(record, lines) };
  // FIRST, MIN and MAX of a dependent variable describe its first page only.
  const only = firstOfSymbol(y);
  const name = cell(variables, 'VARNAME', y).text;
  const even = parsed.form.kind === 'even';
  return ok({
    title: [block.title, name, page.text].filter((t) => t !== '').join(' · '),
    line: record.line,
    form: parsed.form,
    header: {
      firstX: cellNumber(variables, 'FIRST', x), lastX: cellNumber(variables, 'LAST', x), deltaX: undefined,
      firstY: only ? cellNumber(variables, 'FIRST', y) : undefined,
      maxY: only ? cellNumber(variables, 'MAX', y) : undefined,
      minY: only ? cellNumber(variables, 'MIN', y) : undefined,
      points: points && points.value > 0 ? points : undefined,
      xFactor: xFactor.value, yFactor: yFactor.value,
      missingFactors: even && !variables.has('FACTOR') ? ['FACTOR'] : [],
    },
    lines: tableLines(lines, own.from, record.to, own.rest, record.line),
    xUnitText: cell(variables, 'UNITS', x).text, yUnitText: cell(variables, 'UNITS', y).text,
    peaks: /\bPEAKS?\b/i.test(head), complete: block.complete,
  });
}

/** Index of the line after the one that holds the form, where the form stands below its label. */
function firstDataLine(record: JcampRecord, lines: readonly string[]): number {
  let i = record.from;
  while (i < record.to && lines[i]!.trim() === '') i += 1;
  return i + 1;
}

/**
 * The tables of an NTUPLES block: one for each page and dependent variable (JCAMP-DX 5.01, Lampen et al., Pure Appl. Chem. 71
 * (1999) 1549). Errors: 'unknown-form', 'header-number', 'factor-zero'.
 */
export function ntuplesTables(records: readonly JcampRecord[], lines: readonly string[], block: { title: string; complete: boolean }): Result<TableSource[], ReadError> {
  const start = records.findIndex((r) => r.label === 'NTUPLES');
  const variables: Variables = new Map();
  const tables: TableSource[] = [];
  const seen = new Set<number>();
  let page: Page = { text: '', points: undefined };
  for (const record of records.slice(start + 1)) {
    if (record.label === 'ENDNTUPLES') break;
    if (LISTS.has(record.label)) {
      variables.set(record.label, { values: recordText(record, lines).split(','), line: record.line });
    } else if (record.label === 'PAGE') page = { text: recordText(record, lines), points: undefined };
    else if (record.label === 'NPOINTS') page = { ...page, points: parseHeaderNumber(record.value, record.line) };
    else if (record.label === 'DATATABLE') {
      const table = pageTable(record, lines, variables, page, block, (y) => !seen.has(y) && seen.add(y) !== undefined);
      if (!table.ok) return table;
      tables.push(table.value);
    }
  }
  return ok(tables);
}

import { ok, type Result } from '../result.ts';
import { withoutComment } from './jcamp-records.ts';
import { numberList, takeNumbers } from './number-list.ts';
import { lastDigitStep } from './parse-number.ts';
import { excerpt, refusal } from './refusal.ts';
import { plainNumber, plainNumberEnd, scanOrdinates } from './scan-ordinates.ts';
import type { ReadError } from './spectrum-file.ts';

/** One line of an `(X++(Y..Y))` table: its X as written, and which of the ordinates are its own. */
export type DataLine = {
  readonly line: number;
  readonly x: number;
  /** Worth of the last digit of X as written. */
  readonly xDigit: number;
  readonly start: number;
  readonly count: number;
  readonly endsInDifference: boolean;
};

export type ScannedTable = { readonly lines: readonly DataLine[]; readonly ordinates: Float64Array; readonly decimalComma: boolean };

/** A text line of a table with its number. */
export type TableLine = { readonly text: string; readonly line: number };

const EXPONENT = /(\d\.?)[eEdD](?:[+-]\d{1,3}|\d{1,2}(?![\d@A-Za-z%]))/g;

/** True where the line uses pseudo-digits, so that letters are data and "E" is a digit. */
function isCompressed(line: string): boolean {
  return /[@%A-Za-z]/.test(line.replace(EXPONENT, '$1'));
}

/** Decimal commas: no point in the whole table, and on each line with a comma every comma stands within a number that blanks set apart. */
function usesDecimalComma(lines: readonly TableLine[]): boolean {
  let seen = false;
  for (const { text } of lines) {
    if (text.includes('.')) return false;
    if (!text.includes(',')) continue;
    const words = text.trim().split(/[\s;]+/);
    if (words.length < 2 || !words.every((w) => /^[+-]?\d+(?:,\d+)?$/.test(w))) return false;
    seen = true;
  }
  return seen;
}

/** The lines of a table that hold data: without comments and empty lines. */
export function tableLines(lines: readonly string[], from: number, to: number, first: string, firstLine: number): TableLine[] {
  const kept: TableLine[] = [];
  if (first.trim() !== '') kept.push({ text: first, line: firstLine });
  for (let i = from; i < to; i += 1) {
    const text = withoutComment(lines[i]!);
    if (text.trim() !== '') kept.push({ text, line: i + 1 });
  }
  return kept;
}

/**
 * Reads the numbers of an `(X++(Y..Y))` table, line by line, without judging them. The first line decides whether the
 * table is compressed: pseudo-digits in a table of plain numbers are another file's lines, or damage.
 * Errors: 'malformed-token', 'no-data'.
 */
export function scanTable(source: readonly TableLine[], limit: number): Result<ScannedTable, ReadError> {
  const head = source[0];
  if (!head) return refusal('no-data', 'The data table is empty. Export the spectrum again.');
  const compressed = isCompressed(head.text);
  const decimalComma = !compressed && usesDecimalComma(source);
  const out = numberList(Math.min(limit, 16 * source.length));
  const lines: DataLine[] = [];
  for (const { text: raw, line } of source) {
    const text = decimalComma ? raw.replaceAll(',', '.') : raw;
    let at = 0;
    while (at < text.length && (text.charCodeAt(at) <= 32 || text.charCodeAt(at) === 0xa0)) at += 1;
    const xEnd = plainNumberEnd(text, at, compressed);
    const x = plainNumber(text, at, xEnd);
    if (xEnd === at || !Number.isFinite(x)) {
      return refusal('malformed-token', `the line does not begin with an abscissa (“${excerpt(raw)}”). The file is damaged; export it again.`, line);
    }
    const start = out.length;
    const end = scanOrdinates(text, xEnd, compressed, out, limit);
    if (end.kind === 'bad') {
      return refusal('malformed-token', `“${excerpt(text.slice(end.at))}” ${end.why}. The file is damaged; export it again.`, line);
    }
    lines.push({ line, x, xDigit: lastDigitStep(text.slice(at, xEnd)), start, count: out.length - start, endsInDifference: end.endsInDifference });
  }
  return ok({ lines, ordinates: takeNumbers(out), decimalComma });
}

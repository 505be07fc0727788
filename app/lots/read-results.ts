import Papa from 'papaparse';
import { decodeText } from '../files/decode-text.ts';
import { DIALECTS, splitFields, type Dialect } from '../files/delimiter-dialect.ts';
import { splitLines } from '../files/split-lines.ts';
import { err, ok, type Result } from '../result.ts';
import { outcomeOfWord, type LotOutcome } from './lot-outcome.ts';
import { LARGEST_LOT, type ResultEntry } from './lot-record.ts';

export const SEPARATORS = ['\t', ';', ',', '|'] as const;
export type Separator = (typeof SEPARATORS)[number];

/** Which column holds what, and what the file's own words mean. Columns from 0. */
export type ResultMapping = {
  readonly separator: Separator;
  readonly headings: boolean;
  readonly number: number;
  readonly outcome: number;
  /** Words that the house does not know, by what a person said they mean; null leaves such rows out. */
  readonly words: Readonly<Record<string, LotOutcome | null>>;
};

export type ResultTable = { readonly rows: readonly (readonly string[])[]; readonly lines: readonly number[] };

/** A list of results as far as it can be read: what will be entered and what will not, each with its line. */
export type ReadResults = {
  readonly entries: readonly { readonly number: number; readonly outcome: LotOutcome; readonly line: number }[];
  /** Words whose meaning nobody has said, with how often they occur. */
  readonly unknownWords: readonly { readonly word: string; readonly count: number }[];
  readonly sentences: readonly string[];
};

/** Lines looked at for the separator. */
const SAMPLE_LINES = 200;

/** The separator that gives most lines the same number of fields, two or more; tab where none does. */
function chooseSeparator(lines: readonly string[]): Separator {
  const some = lines.filter((line) => line.trim() !== '').slice(0, SAMPLE_LINES);
  const fit = (separator: Dialect['separator']): number => {
    const widths = some.map((line) => splitFields(line, separator).length).filter((width) => width > 1);
    const most = widths.toSorted((a, b) => a - b)[Math.floor(widths.length / 2)];
    return widths.filter((width) => width === most).length;
  };
  const known = DIALECTS.map((dialect) => dialect.separator).filter((separator): separator is Separator => separator !== 'blank');
  return known.reduce((best, separator) => (fit(separator) > fit(best) ? separator : best), '\t' as Separator);
}

/** The rows of a delimited text, quoted fields whole, empty rows left out. `message` says why nothing could be read. */
export function readTable(bytes: Uint8Array, separator?: Separator): Result<ResultTable & { separator: Separator }, { message: string }> {
  const decoded = decodeText(bytes);
  if (!decoded.ok) return err({ message: decoded.error.code === 'empty-file' ? 'The file is empty.' : 'This file is not a delimited text. Save the list as text, its columns set apart by tab, semicolon or comma.' });
  const chosen = separator ?? chooseSeparator(splitLines(decoded.value.text));
  const parsed = Papa.parse<string[]>(decoded.value.text, { delimiter: chosen });
  const rows: string[][] = [];
  const lines: number[] = [];
  parsed.data.forEach((row, i) => {
    if (row.every((field) => field.trim() === '')) return;
    rows.push(row.map((field) => field.trim()));
    lines.push(i + 1);
  });
  if (!rows.some((row) => row.length > 1)) return err({ message: 'The text has one column: a list needs the stone’s number and its outcome, set apart by tab, semicolon or comma.' });
  return ok({ rows, lines, separator: chosen });
}

const numberOf = (field: string): number | undefined => {
  const digits = /^#?\s*0*(\d{1,7})$/.exec(field)?.[1];
  return digits === undefined ? undefined : Number(digits);
};

/** A mapping to begin with: the column with most whole numbers, the other one with most known words. */
export function guessMapping({ rows, separator }: ResultTable & { separator: Separator }): ResultMapping {
  const width = Math.max(...rows.map((row) => row.length));
  const columns = Array.from({ length: width }, (_, c) => c);
  const share = (c: number, fits: (field: string) => boolean): number => rows.filter((row) => fits(row[c] ?? '')).length;
  const best = (fits: (field: string) => boolean, without: number): number => columns.filter((c) => c !== without).reduce((a, b) => (share(b, fits) > share(a, fits) ? b : a), without === 0 ? 1 : 0);
  const number = best((field) => numberOf(field) !== undefined, -1);
  const outcome = best((field) => outcomeOfWord(field) !== undefined, number);
  return { separator, headings: numberOf(rows[0]?.[number] ?? '') === undefined, number, outcome, words: {} };
}

const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;
const listed = (items: readonly (string | number)[]): string => `${items.slice(0, 6).join(', ')}${items.length > 6 ? ' …' : ''}`;

/**
 * What a table says about a lot of `lot` stones. A row without a whole number or with a word nobody explained is left out and named; so are numbers beyond
 * the lot. The same number twice with one outcome counts once; with two outcomes it is left out, for nobody can say which holds.
 */
export function readResults({ rows, lines }: ResultTable, mapping: ResultMapping, lot: number): ReadResults {
  const first = mapping.headings ? 1 : 0;
  const byNumber = new Map<number, { outcome: LotOutcome; line: number }>();
  const unknown = new Map<string, number>();
  const noNumber: number[] = [];
  const beyond: number[] = [];
  const repeated = new Set<number>();
  const contradicting = new Set<number>();
  let leftOut = 0;
  for (let i = first; i < rows.length; i += 1) {
    const number = numberOf(rows[i]![mapping.number] ?? '');
    const word = rows[i]![mapping.outcome] ?? '';
    const said = Object.hasOwn(mapping.words, word) ? mapping.words[word] : outcomeOfWord(word);
    if (number === undefined || number < 1) noNumber.push(lines[i]!);
    else if (said === undefined) unknown.set(word, (unknown.get(word) ?? 0) + 1);
    else if (said === null) leftOut += 1;
    else if (number > lot || number > LARGEST_LOT) beyond.push(number);
    else {
      const there = byNumber.get(number);
      if (there === undefined) byNumber.set(number, { outcome: said, line: lines[i]! });
      else if (there.outcome === said) repeated.add(number);
      else contradicting.add(number);
    }
  }
  for (const number of contradicting) byNumber.delete(number);
  const entries = [...byNumber].map(([number, { outcome, line }]) => ({ number, outcome, line })).sort((a, b) => a.number - b.number);
  const sentences: string[] = [];
  if (noNumber.length > 0) sentences.push(`${count(noNumber.length, 'row')} without a stone’s number: line ${listed(noNumber)}. Left out.`);
  if (beyond.length > 0) sentences.push(`${count(beyond.length, 'number')} beyond the ${lot} stones of the lot: ${listed(beyond)}. Left out; count the lot again if they are right.`);
  if (repeated.size > 0) sentences.push(`${count(repeated.size, 'number')} listed more than once with the same outcome: ${listed([...repeated])}. Taken once.`);
  if (contradicting.size > 0) sentences.push(`${count(contradicting.size, 'number')} listed with different outcomes: ${listed([...contradicting])}. Left out; enter ${contradicting.size === 1 ? 'it' : 'them'} by hand.`);
  if (leftOut > 0) sentences.push(`${count(leftOut, 'row')} left out as you said.`);
  return { entries, unknownWords: [...unknown].map(([word, n]) => ({ word, count: n })).sort((a, b) => b.count - a.count), sentences };
}

/** The read results as entries beside what stands: those that say the same already are not entered again. */
export function entriesToAdd(read: ReadResults, standing: ReadonlyMap<number, LotOutcome>, replace: boolean): { entries: ResultEntry[]; same: number; differing: number[] } {
  const entries: ResultEntry[] = [];
  const differing: number[] = [];
  let same = 0;
  for (const { number, outcome } of read.entries) {
    const was = standing.get(number) ?? null;
    if (was === outcome) same += 1;
    else if (was !== null && !replace) differing.push(number);
    else entries.push({ number, outcome, was });
    if (was !== null && was !== outcome && replace) differing.push(number);
  }
  return { entries, same, differing };
}

import { splitFields, type Dialect } from './delimiter-dialect.ts';
import { parseNumber } from './parse-number.ts';
import { xUnitFromWords, yUnitFromWords } from './unit-words.ts';

/** What the lines above a table say. */
export type TextHeader = {
  /** One for each column, with its unit where a line of units follows ("Wave [nm]"); undefined where no line names the columns. */
  readonly names: readonly string[] | undefined;
  /** How many names the line above the table has, where these are not as many as the columns and so can't be used. */
  readonly namesUnused: number | undefined;
  readonly entries: readonly (readonly [string, string])[];
  readonly title: string;
  /** Words about the axes from entries such as "X Units: nm". */
  readonly xWords: string;
  readonly yWords: string;
  /** Number of points that an entry promises, with its line. */
  readonly points: { readonly value: number; readonly line: number } | undefined;
};

/** Characters of a header line that are looked at; the rest of a longer one is left in the raw file. */
const LINE_CHARS = 4000;

const withoutMark = (line: string): string => line.trimStart().replace(/^(?:#+|%+(?![a-z])|!+|\/\/+|\$+)/i, '').trim();

/** "Wavelength (nm) Intensity" → two fields: a bracket or a stroke belongs to the word before it. */
function splitWords(line: string): string[] {
  const fields: string[] = [];
  for (const word of line.trim().split(/\s+/)) {
    if (/^[([/]|^[a-z%\u00b5\u03bc./-]*[\])]$/i.test(word) && fields.length > 0) fields[fields.length - 1] += ` ${word}`;
    else fields.push(word);
  }
  return fields;
}

const SPLITTERS: readonly ((line: string, own: Dialect['separator']) => string[])[] = [
  (line, own) => (own === 'blank' ? [] : splitFields(line, own)),
  (line) => splitFields(line, '\t'),
  (line) => splitFields(line, ';'),
  (line) => splitFields(line, ','),
  (line) => line.trim().split(/\s{2,}/),
  splitWords,
  // "Raman shift (cm-1) Intensity": the words before a bracket form one name
  (line) => line.trim().split(/(?<=[)\]])\s+/),
  // "Raman shift/cm-1 Intensity": the first unit ends the first name
  (line) => line.trim().split(/(?<=^[^\t]{0,60}(?:1\/cm|cm\^?-1|\bnm|\bev|\u00e5|angstrom))\s+/i),
];

/** The fields of a line if it can be a line of names: as many as columns, none of them a number, none a "key:". */
function asNames(line: string, width: number, dialect: Dialect): string[] | undefined {
  const bare = withoutMark(line);
  if (bare.length >= LINE_CHARS || /^\s*##/.test(line) || /^\s*[^\s:=]+[^:=]{0,40}:\s|^\s*[{<>]/.test(bare)) return undefined;
  for (const split of SPLITTERS) {
    const fields = split(bare, dialect.separator);
    if (fields.length !== width) continue;
    // Curves may be named by numbers where the first column is named as an axis; the name of a counting column may be empty.
    const numbered = xUnitFromWords(fields[0]!) !== undefined || /^wave|^lambda/i.test(fields[0]!);
    const isName = (f: string, c: number): boolean =>
      (f !== '' || c === 0) && (numbered || parseNumber(f, dialect.decimalComma) === undefined) && !/[:=<>{}]/.test(f);
    if (fields.every(isName) && fields.some((f) => /[^\d.,\s]/.test(f))) return fields;
  }
  return undefined;
}

/** Number of names of the line right above the table, where these are not as many as its columns. */
function otherNames(above: readonly string[], width: number, dialect: Dialect): number | undefined {
  const line = above.filter((l) => withoutMark(l).trim() !== '').at(-1);
  if (line === undefined || dialect.separator === 'blank') return undefined;
  const count = splitFields(withoutMark(line), dialect.separator).length;
  const names = count > 1 && count !== width ? asNames(line, count, dialect) : undefined;
  return names?.some((name) => xUnitFromWords(name) !== undefined) ? count : undefined;
}

const isUnit = (field: string): boolean => /^[[(].{0,20}[\])]$|^(?:nm|a|\u00e5|cm-?1|1\/cm|ev|counts?|cts|%|%t|%r|a\.?\s?u\.?|abs|-+)$/i.test(field.trim());

/** The names of the columns from the lines right above the table; a line of units is joined to the names above it. */
function columnNames(above: readonly string[], width: number, dialect: Dialect): string[] | undefined {
  const near = above.filter((l) => withoutMark(l).trim() !== '').slice(-3).reverse();
  const [lowest, second] = near.map((line) => asNames(line, width, dialect));
  if (!lowest) return second && near[0] !== undefined && !/[a-z]/i.test(near[0]) ? second : undefined;
  if (lowest.every(isUnit) && second) return second.map((name, c) => `${name} ${lowest[c]!}`);
  return lowest;
}

/** Label and value of a header line: "key: value", "key=value", "key<tab>value"; in a file with commas between its columns also "key,value". */
function entryOf(line: string, separator: Dialect['separator']): readonly [string, string] | undefined {
  const bare = withoutMark(line).trim();
  if (separator === ',' && !/[:=\t;]/.test(bare.split(',')[0]!)) {
    const [key = '', value = '', ...more] = splitFields(bare, ',').map((field) => field.trim());
    if (key !== '' && value !== '' && more.every((field) => field === '')) return [key, value];
  }
  const at = bare.slice(0, 80).search(/[:=\t;]/);
  if (bare === '' || at <= 0) return undefined;
  return [bare.slice(0, at).trim(), bare.slice(at + 1).trim()];
}

const X_KEY = /^x$|^axis\s*_?unit|^x[\s_-]*(?:axis|unit|label|title|data\s*unit)|^abscissa|^(?:wavelength|wavenumber|spectral)\s*(?:unit|axis)|^xunits?$/i;
const Y_KEY = /^y$|^axis\s*_?unit|^y[\s_-]*(?:axis|unit|label|title|data\s*unit)|^ordinate|^intensity\s*unit|^yunits?$|^(?:data|measurement|spectrum)\s*(?:type|mode)$/i;
const TITLE_KEYS = [/^title$/i, /^(?:sample|specimen)(?:\s*(?:name|id))?$/i, /^names?$/i, /^spectrum(?:\s*name)?$/i];
const POINTS_KEY = /^(?:n\s*points|(?:number|no\.?|nr\.?)\s*of\s*(?:points|data\s*points|pixels\b.*|samples))$/i;

/**
 * Reads the lines between the last table (or the top) and the table whose first row is line index `to`: names of its columns,
 * entries, title, axis words, promised number of points.
 */
export function readTextHeader(lines: readonly string[], from: number, to: number, width: number, dialect: Dialect): TextHeader {
  const above = lines.slice(from, to).map((line) => line.trim().slice(0, LINE_CHARS));
  const entries: (readonly [string, string])[] = [];
  let points: TextHeader['points'];
  above.forEach((line, i) => {
    const entry = entryOf(line, dialect.separator);
    if (!entry) return;
    entries.push(entry);
    const value = POINTS_KEY.test(entry[0]) ? Number.parseInt(entry[1], 10) : Number.NaN;
    if (Number.isInteger(value) && value > 0) points = { value, line: from + i + 1 };
  });
  const valueOf = (key: RegExp): string => entries.find(([k]) => key.test(k))?.[1] ?? '';
  const names = columnNames(above, width, dialect);
  return {
    names, namesUnused: names === undefined ? otherNames(above, width, dialect) : undefined, entries, points,
    title: TITLE_KEYS.map(valueOf).find((v) => v !== '' && v.length < 200) ?? '',
    xWords: axisWords(entries, X_KEY, (v) => xUnitFromWords(v) !== undefined),
    yWords: axisWords(entries, Y_KEY, (v) => xUnitFromWords(v) === undefined && yUnitFromWords(v) !== undefined),
  };
}

function axisWords(entries: readonly (readonly [string, string])[], key: RegExp, names: (value: string) => boolean): string {
  return entries.find(([k, v]) => key.test(k) && names(v))?.[1] ?? '';
}

import { parseNumber } from './parse-number.ts';

/** How the columns of a text are set apart and how its decimals are written. 'blank' is any run of spaces and tabs. */
export type Dialect = { readonly separator: '\t' | ';' | ',' | '|' | 'blank'; readonly decimalComma: boolean };

/** In order of preference where several fit equally well. */
export const DIALECTS: readonly Dialect[] = [
  { separator: '\t', decimalComma: false },
  { separator: '\t', decimalComma: true },
  { separator: ';', decimalComma: false },
  { separator: ';', decimalComma: true },
  { separator: ',', decimalComma: false },
  { separator: ',', decimalComma: true },
  { separator: 'blank', decimalComma: false },
  { separator: 'blank', decimalComma: true },
  { separator: '|', decimalComma: false },
  { separator: '|', decimalComma: true },
];

/** Lines looked at when the dialect is chosen; more would only cost time. */
const SAMPLE_LINES = 600;

function splitQuoted(line: string, separator: string): string[] {
  const fields: string[] = [];
  let field = '';
  let quoted = false;
  for (const c of line) {
    if (c === '"') quoted = !quoted;
    else if (c === separator && !quoted) {
      fields.push(field.trim());
      field = '';
    } else field += c;
  }
  fields.push(field.trim());
  return fields;
}

/** The fields of a line, trimmed and unquoted; empty fields at its end are dropped. */
export function splitFields(line: string, separator: Dialect['separator']): string[] {
  if (separator === 'blank') {
    const text = line.trim();
    return text === '' ? [] : text.split(/\s+/);
  }
  const fields = line.includes('"') ? splitQuoted(line, separator) : line.split(separator).map((f) => f.trim());
  while (fields.length > 0 && fields.at(-1) === '') fields.pop();
  return fields;
}

/** The numbers of a line of two columns or more; undefined where any field is not one complete number. */
export function parseRow(line: string, dialect: Dialect): number[] | undefined {
  const c = firstChar(line);
  // A number begins with a digit, a sign, a decimal mark or a quote: headers are passed over quickly.
  if (!((c >= 48 && c <= 57) || c === 43 || c === 45 || c === 46 || c === 44 || c === 34 || c === 0x2212)) return undefined;
  const fields = splitFields(line, dialect.separator);
  if (fields.length < 2) return undefined;
  const row: number[] = [];
  for (const field of fields) {
    const value = parseNumber(field, dialect.decimalComma);
    if (value === undefined) return undefined;
    row.push(value);
  }
  return row;
}

function firstChar(line: string): number {
  let i = 0;
  while (i < line.length && (line.charCodeAt(i) <= 32 || line.charCodeAt(i) === 0xa0)) i += 1;
  return i < line.length ? line.charCodeAt(i) : 0;
}

/** Lines spread over the whole text, in pieces, so that neither a long header nor a long footer decides. */
function sample(lines: readonly string[]): readonly string[] {
  if (lines.length <= SAMPLE_LINES) return lines;
  const stride = lines.length / SAMPLE_LINES;
  return Array.from({ length: SAMPLE_LINES }, (_, i) => lines[Math.floor(i * stride)]!);
}

/** The dialect in which most lines are rows of numbers; undefined where none has such a line. */
export function chooseDialect(lines: readonly string[]): Dialect | undefined {
  const some = sample(lines);
  let best: Dialect | undefined;
  let bestRows = 0;
  for (const dialect of DIALECTS) {
    const rows = some.reduce((n, line) => n + (parseRow(line, dialect) ? 1 : 0), 0);
    if (rows > bestRows) {
      best = dialect;
      bestRows = rows;
    }
  }
  return best;
}

import type { Dialect } from './delimiter-dialect.ts';
import { parseNumber } from './parse-number.ts';
import { xUnitFromWords } from './unit-words.ts';

/** The lines of a file as if one pair of its columns stood alone, at the same places; the pair's second name where it has one. */
export type PairLines = { readonly lines: readonly string[]; readonly name: string };

/** Complete rows that must come first before empty fields can mean a shorter curve. */
const LEAST_FULL_ROWS = 2;

const fieldsOf = (line: string, separator: string): string[] => line.split(separator).map((field) => field.trim());

type PairRow = { readonly fields: readonly string[]; readonly full: readonly boolean[] };

/** A row of pairs, each complete or empty; undefined where the line is none. */
function pairRow(line: string, width: number, dialect: Dialect): PairRow | undefined {
  const fields = fieldsOf(line, dialect.separator);
  if (fields.length !== width) return undefined;
  const full: boolean[] = [];
  for (let c = 0; c < width; c += 2) {
    const given = [fields[c]!, fields[c + 1]!].map((field) => (field === '' ? null : parseNumber(field, dialect.decimalComma)));
    if (given.every((value) => value === null)) full.push(false);
    else if (given.every((value) => typeof value === 'number')) full.push(true);
    else return undefined;
  }
  return full.some(Boolean) ? { fields, full } : undefined;
}

/** x rises or falls throughout. */
function runsOneWay(values: readonly number[]): boolean {
  const direction = Math.sign(values[1]! - values[0]!);
  return direction !== 0 && values.every((value, i) => i === 0 || Math.sign(value - values[i - 1]!) === direction);
}

/** Whether first columns are axes: by their names where there are any, else by running one way where the others do not. */
function areAxes(rows: readonly PairRow[], names: readonly string[] | undefined, dialect: Dialect): boolean {
  const pairs = rows[0]!.full.length;
  return Array.from({ length: pairs }, (_, k) => k).every((k) => {
    if (names) return xUnitFromWords(names[2 * k]!) !== undefined || /^(?:x|wave|lambda)/i.test(names[2 * k]!);
    const column = (c: number): number[] => rows.filter((row) => row.full[k]).map((row) => parseNumber(row.fields[c]!, dialect.decimalComma)!);
    return runsOneWay(column(2 * k)) && !runsOneWay(column(2 * k + 1));
  });
}

/**
 * Curves of different lengths side by side, x y x y …, whose shorter ones end in empty fields; each as lines of its own. Undefined where
 * the file is anything else: fields empty in between, half a pair, first columns that are no axes, lines below the table.
 */
export function splitPairs(lines: readonly string[], dialect: Dialect): PairLines[] | undefined {
  const { separator } = dialect;
  if (separator === 'blank' || lines.some((line) => line.includes('"') && fieldsOf(line, separator).some((field) => /^[^"]*"[^"]*$/.test(field)))) return undefined;
  const first = lines.findIndex((line) => {
    const width = fieldsOf(line, separator).length;
    return width >= 4 && width % 2 === 0 && pairRow(line, width, dialect)?.full.every(Boolean) === true;
  });
  if (first < 0) return undefined;
  const width = fieldsOf(lines[first]!, separator).length;
  const rows = new Map<number, PairRow>();
  for (let i = first; i < lines.length; i += 1) {
    if (lines[i]!.trim() === '') continue;
    const row = pairRow(lines[i]!, width, dialect);
    if (!row) return undefined;
    rows.set(i, row);
  }
  const all = [...rows.values()];
  const endsOnce = all.every((row, i) => i === 0 || row.full.every((full, k) => !full || all[i - 1]!.full[k]!));
  const whole = all.filter((row) => row.full.every(Boolean)).length;
  if (!endsOnce || whole < LEAST_FULL_ROWS || whole === all.length) return undefined;
  const above = first > 0 ? fieldsOf(lines[first - 1]!, separator).map((field) => field.replace(/^"(.*)"$/, '$1')) : [];
  const names = above.length === width && above.every((name) => name !== '') ? above : undefined;
  if (!areAxes(all, names, dialect)) return undefined;
  return Array.from({ length: width / 2 }, (_, k) => ({
    name: names?.[2 * k + 1] ?? '',
    lines: lines.map((line, i) => {
      if (i === first - 1 && names) return `${names[2 * k]!}${separator}${names[2 * k + 1]!}`;
      const row = rows.get(i);
      if (!row) return i < first ? line : '';
      return row.full[k]! ? `${row.fields[2 * k]!}${separator}${row.fields[2 * k + 1]!}` : '';
    }),
  }));
}

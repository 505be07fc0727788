import { splitFields, type Dialect } from './delimiter-dialect.ts';
import type { TextTable } from './find-tables.ts';

/** Rows looked at before a whole column is read again. */
const SAMPLE_ROWS = 400;
const WHOLE = /^[+-]?\d{1,3}$/;
const GROUPED = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;

/** Whether a column's fields are all whole numbers below 1,000 or numbers with exactly three digits behind the mark, both kinds being there. */
function looksGrouped(fields: Iterable<string>): boolean {
  let whole = false;
  let grouped = false;
  for (const field of fields) {
    if (WHOLE.test(field)) whole ||= field.replace(/^[+-]/, '').length === 3;
    else if (GROUPED.test(field)) grouped = true;
    else return false;
  }
  return whole && grouped;
}

/**
 * Line of the first number whose mark must be a thousands separator: in its column 974 stands beside 1.011, and every mark has three digits behind it.
 * Read as decimals such a column would fall from 999 to 1. Null where nothing speaks for it.
 */
export function thousandsLine(lines: readonly string[], table: TextTable, dialect: Dialect): number | null {
  const fieldsOf = (line: number): string[] => splitFields(lines[line - 1]!, dialect.separator);
  const every = Math.max(1, Math.floor(table.lineOf.length / SAMPLE_ROWS));
  const some = [...table.lineOf].filter((_, i) => i % every === 0).map(fieldsOf);
  for (let c = 0; c < table.columns.length; c += 1) {
    if (!some.every((fields) => WHOLE.test(fields[c] ?? '') || GROUPED.test(fields[c] ?? ''))) continue;
    if (!looksGrouped([...table.lineOf].map((line) => fieldsOf(line)[c] ?? ''))) continue;
    return [...table.lineOf].find((line) => GROUPED.test(fieldsOf(line)[c] ?? '')) ?? null;
  }
  return null;
}

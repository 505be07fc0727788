import { csvText } from '../tables/csv-text.ts';
import type { BatchRow } from './batch-row.ts';

const COLUMNS: readonly (readonly [string, (row: BatchRow) => string])[] = [
  ['file', (row) => row.file], ['curve', (row) => (row.block === null ? '' : String(row.block + 1))], ['title', (row) => row.title],
  ['diamond line', (row) => row.diamond ?? ''], ['diamond line, nm', (row) => (row.diamondNm === null ? '' : row.diamondNm.toFixed(3))],
  ['centres', (row) => row.centres.join(' ')], ['peaks', (row) => (row.error === null ? String(row.peaks) : '')], ['infrared type', (row) => row.infraredType ?? ''], ['luminescence', (row) => row.colour ?? ''],
  ['findings', (row) => row.findings.map((finding) => finding.statement).join(' | ')], ['warnings', (row) => row.warnings.join(' | ')], ['not analysed', (row) => row.error?.message ?? ''],
];

/** The table of a batch as CSV (RFC 4180), one line for each curve. */
export const batchToCsv = (rows: readonly BatchRow[]): string => csvText(COLUMNS.map(([head]) => head), rows.map((row) => COLUMNS.map(([, of]) => of(row))));

/** The same as JSON. */
export const batchToJson = (rows: readonly BatchRow[]): string => `${JSON.stringify(rows, null, 2)}\n`;

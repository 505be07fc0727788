import type { BatchRow } from './batch-row.ts';

const COLUMNS: readonly (readonly [string, (row: BatchRow) => string])[] = [
  ['file', (row) => row.file], ['curve', (row) => (row.block === null ? '' : String(row.block + 1))], ['title', (row) => row.title],
  ['diamond line', (row) => row.diamond ?? ''], ['diamond line, nm', (row) => (row.diamondNm === null ? '' : row.diamondNm.toFixed(3))],
  ['centres', (row) => row.centres.join(' ')], ['peaks', (row) => (row.error === null ? String(row.peaks) : '')], ['infrared type', (row) => row.infraredType ?? ''], ['luminescence', (row) => row.colour ?? ''],
  ['findings', (row) => row.findings.map((finding) => finding.statement).join(' | ')], ['warnings', (row) => row.warnings.join(' | ')], ['not analysed', (row) => row.error?.message ?? ''],
];

/** A cell that spreadsheets neither split nor take for a formula. */
function cell(text: string): string {
  const plain = /^[=+@\t\r-]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

/** The table of a batch as CSV (RFC 4180), one line for each curve. */
export const batchToCsv = (rows: readonly BatchRow[]): string => [COLUMNS.map(([head]) => head), ...rows.map((row) => COLUMNS.map(([, of]) => cell(of(row))))].map((line) => `${line.join(',')}\r\n`).join('');

/** The same as JSON. */
export const batchToJson = (rows: readonly BatchRow[]): string => `${JSON.stringify(rows, null, 2)}\n`;

export type CsvValue = string | number | null;

/** A cell that spreadsheets neither split nor take for a formula. Numbers stay numbers. */
function cell(value: CsvValue): string {
  if (typeof value !== 'string') return value === null ? '' : String(value);
  const plain = /^[=+@\t\r-]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

/** One line of a table, its end included. */
export const csvLine = (cells: readonly CsvValue[]): string => `${cells.map(cell).join(',')}\r\n`;

/** A table as comma-separated text (RFC 4180). */
export const csvText = (head: readonly string[], rows: readonly (readonly CsvValue[])[]): string => [head, ...rows].map(csvLine).join('');

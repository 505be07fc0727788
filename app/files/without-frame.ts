/** Marks that some writers set at the beginning of every line of a table. */
const FRAMES = ['|', ';'] as const;
/** Lines that must begin so before the mark counts as a frame. */
const LEAST_LINES = 2;

/**
 * The lines without the mark that stands before the first field of every row of numbers ("| 400 | 1.2 |"); unchanged where a row of
 * numbers begins without it. Places of lines stay.
 */
export function withoutFrame(lines: readonly string[]): readonly string[] {
  if (lines.some((line) => /^\s*[+-]?[\d.,]*\d/.test(line) && /[|;]/.test(line))) return lines;
  for (const mark of FRAMES) {
    const framed = (line: string): boolean => line.trimStart().startsWith(mark);
    const rows = lines.filter((line) => framed(line) && /^\s*[+-]?(?:\d|[.,]\d)/.test(line.trimStart().slice(1)));
    if (rows.length >= LEAST_LINES) return lines.map((line) => (framed(line) ? line.trimStart().slice(1) : line));
  }
  return lines;
}

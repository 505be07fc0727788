/** One labelled data record: `##LABEL= value` and the lines up to the next record. */
export type JcampRecord = {
  /** Upper case, without blanks, hyphens, slashes and underscores, as the standard compares labels. */
  readonly label: string;
  /** The label as written. */
  readonly written: string;
  /** Rest of the first line, without comment. */
  readonly value: string;
  /** Line number (from 1) of the label. */
  readonly line: number;
  /** Indices of the lines that follow the label's: `from` included, `to` excluded. */
  readonly from: number;
  readonly to: number;
};

/** Without the `$$` comment. */
export function withoutComment(line: string): string {
  const at = line.indexOf('$$');
  return at < 0 ? line : line.slice(0, at);
}

export function normaliseLabel(label: string): string {
  return label.toUpperCase().replace(/[\s\-/_]+/g, '');
}

/** Label and value of a record's first line; undefined for any other line. `##END` is accepted without its "=". */
function recordStart(line: string): { written: string; value: string } | undefined {
  const at = line.indexOf('##');
  if (at < 0 || line.slice(0, at).trim() !== '') return undefined;
  const rest = line.slice(at + 2);
  const equals = rest.indexOf('=');
  if (equals >= 0) return { written: rest.slice(0, equals).trim(), value: withoutComment(rest.slice(equals + 1)).trim() };
  return /^\s*END\s*$/i.test(withoutComment(rest)) ? { written: 'END', value: '' } : undefined;
}

/** Splits the lines of a JCAMP-DX file into its records, in order. Lines before the first record are not part of any. */
export function splitRecords(lines: readonly string[]): JcampRecord[] {
  const records: JcampRecord[] = [];
  let open: Omit<JcampRecord, 'to'> | undefined;
  for (let i = 0; i < lines.length; i += 1) {
    const start = recordStart(lines[i]!);
    if (!start) continue;
    if (open) records.push({ ...open, to: i });
    open = { ...start, label: normaliseLabel(start.written), line: i + 1, from: i + 1 };
  }
  if (open) records.push({ ...open, to: lines.length });
  return records;
}

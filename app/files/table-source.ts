import type { TableHeader } from './jcamp-header.ts';
import type { TableForm } from './jcamp-form.ts';
import type { TableLine } from './scan-table.ts';

/** One data table of a JCAMP-DX file, found but not yet read. */
export type TableSource = {
  readonly title: string;
  /** Line of the table's label. */
  readonly line: number;
  readonly header: TableHeader;
  readonly form: TableForm;
  readonly lines: readonly TableLine[];
  readonly xUnitText: string;
  readonly yUnitText: string;
  /** A list of peaks, which need not be in order. */
  readonly peaks: boolean;
  /** True where the block ends with END, so that nothing was cut off behind the table. */
  readonly complete: boolean;
};

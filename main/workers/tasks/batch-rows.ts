import { failedRow, rowOf, type BatchRow } from '../../../app/batch/batch-row.ts';
import { readSpectrumFile } from '../../../app/files/read-spectrum-file.ts';
import { analyseSpectrum } from '../../../app/spectra/analyse-spectrum.ts';
import type { AnalysisParameters } from '../../../app/spectra/analysis.ts';
import type { StatableXUnit } from '../../../app/spectra/spectrum.ts';
import type { Task } from '../task.ts';

export type BatchPayload = { readonly files: readonly { readonly name: string; readonly bytes: Uint8Array; readonly xUnit?: StatableXUnit | undefined }[]; readonly parameters: AnalysisParameters };

/** Rows of one file: one for each curve, or one that says why there is none. A table of peaks beside a curve is no curve. */
function rowsOfFile({ name, bytes, xUnit }: BatchPayload['files'][number], parameters: AnalysisParameters): BatchRow[] {
  const read = readSpectrumFile(name, bytes, xUnit === undefined ? {} : { xUnit });
  if (!read.ok) return [failedRow(name, null, '', read.error)];
  const warnings = read.value.warnings.map((warning) => warning.message);
  const curves = read.value.blocks.map((block, index) => ({ block, index })).filter(({ block }) => block.peaksOnly !== true);
  if (curves.length === 0) return [failedRow(name, null, '', { code: 'peak-table', message: 'This is a table of peaks; there is no curve in it to analyse.' }, warnings)];
  return curves.map(({ block, index }) => {
    const outcome = analyseSpectrum(block, parameters);
    return outcome.ok ? rowOf(name, index, block.title, outcome.value.result, warnings) : failedRow(name, index, block.title, outcome.error, warnings);
  });
}

/** Reads and analyses files and gives their rows, in order. */
export const batchRowsTask: Task<BatchPayload, BatchRow[]> = {
  run: ({ files, parameters }) => files.flatMap((file) => rowsOfFile(file, parameters)),
};

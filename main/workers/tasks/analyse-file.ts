import type { ReadOptions } from '../../../app/files/spectrum-file.ts';
import type { AnalysisParameters } from '../../../app/spectra/analysis.ts';
import { analyseFile, type AnalysedFile } from '../../cli/analyse-file.ts';
import type { Task } from '../task.ts';

export type AnalyseFilePayload = { readonly file: string; readonly bytes: Uint8Array; readonly stated: ReadOptions; readonly parameters: AnalysisParameters };

/** Reads one file and analyses its curves, for the command line. */
export const analyseFileTask: Task<AnalyseFilePayload, AnalysedFile> = {
  run: ({ file, bytes, stated, parameters }) => analyseFile(file, bytes, stated, parameters),
};

import { analyseSpectrum } from '../../../app/spectra/analyse-spectrum.ts';
import type { AnalysisParameters } from '../../../app/spectra/analysis.ts';
import type { Spectrum } from '../../../app/spectra/spectrum.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

export type AnalysePayload = { readonly spectrum: Spectrum; readonly parameters: AnalysisParameters };
export type AnalyseOutcome = ReturnType<typeof analyseSpectrum>;

/** Analyses one curve: numbers, findings and the processed curves. */
export const analyseSpectrumTask: Task<AnalysePayload, AnalyseOutcome> = {
  run: ({ spectrum, parameters }) => analyseSpectrum(spectrum, parameters),
  transfers: (outcome) => outcome.ok ? buffersOf([outcome.value.curves.x, outcome.value.curves.raw, outcome.value.curves.smoothed, outcome.value.curves.baseline]) : [],
};

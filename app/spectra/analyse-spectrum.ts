import type { Result } from '../result.ts';
import { ok } from '../result.ts';
import { analyseInfrared } from '../infrared/analyse-infrared.ts';
import { correctAxis } from '../calibration/scale-of-run.ts';
import { luminescenceColour, type LuminescenceColourResult } from '../colour/luminescence-colour.ts';
import { infraredPeaks } from '../infrared/infrared-peaks.ts';
import { TABLES_VERSION } from '../reference/optical-centres.ts';
import type { AnalysisParameters, AnalysisResult, AnalysisWarning, ProcessedCurves } from './analysis.ts';
import type { AnalysisError } from './analysis-error.ts';
import { analyseEmission } from './analyse-emission.ts';
import { analyseAbsorption } from './analyse-absorption.ts';
import type { Detection, DetectionOptions } from './detect-lines.ts';
import { detectLines } from './detect-lines.ts';
import { findingsFromAnalysis } from './findings-from-analysis.ts';
import type { FindingInput } from './finding-input.ts';
import type { PreparedSpectrum } from './prepare-spectrum.ts';
import { prepareSpectrum } from './prepare-spectrum.ts';
import { resolutionInUnit } from './resolution-in-unit.ts';
import type { Spectrum } from './spectrum.ts';
import { readUltraviolet } from './ultraviolet.ts';

/** Version of the whole computation; stored with each analysis. Raise it with every change that can alter a number. */
export const PIPELINE_VERSION = 'culet-spectra 1.3.0';

/** Widths, in the analysis unit, that part lines from background for each method (judgement). */
export const DETECTION: Readonly<Record<AnalysisParameters['method'], Pick<DetectionOptions, 'baselinePeriod' | 'widest' | 'shotNoise'>>> = {
  photoluminescence: { baselinePeriod: 60, widest: 30, shotNoise: true },
  raman: { baselinePeriod: 300, widest: 150, shotNoise: true },
  absorption: { baselinePeriod: 80, widest: 40, shotNoise: false },
  infrared: { baselinePeriod: 250, widest: 80, shotNoise: false },
  'ultraviolet-transmission': { baselinePeriod: 100, widest: 40, shotNoise: false },
};

export type Analysis = { readonly result: AnalysisResult; readonly curves: ProcessedCurves };

function interpret(prepared: PreparedSpectrum, detection: Detection, parameters: AnalysisParameters): Omit<FindingInput, 'parameters'> {
  const nothing = { peaks: [], named: [], diamondRaman: null, simulant: null, infrared: null, ultraviolet: null, bands: [], warnings: [] };
  switch (parameters.method) {
    case 'photoluminescence':
    case 'raman': return { ...nothing, ...analyseEmission(prepared, detection, parameters) };
    case 'absorption': return { ...nothing, ...analyseAbsorption(prepared, detection, parameters) };
    case 'infrared': {
      const infrared = analyseInfrared(prepared, detection, parameters);
      return { ...nothing, peaks: infraredPeaks(detection), infrared: infrared.reading, warnings: infrared.warnings };
    }
    case 'ultraviolet-transmission': {
      const { warnings, ...ultraviolet } = readUltraviolet(prepared.x, detection.smoothed, detection.noise);
      return { ...nothing, ultraviolet, warnings };
    }
  }
}

function conditioningWarnings(prepared: PreparedSpectrum, detection: Detection): AnalysisWarning[] {
  const warnings: AnalysisWarning[] = [];
  const { saturation, spikes } = detection;
  const unit = prepared.unit === 'nm' ? 'nm' : 'cm⁻¹';
  if (saturation && prepared.ordinate === 'intensity') {
    const [from, to] = saturation.runs[0]!;
    warnings.push({ code: 'saturated', message: `The detector was saturated from ${prepared.x[from]!.toFixed(1)} to ${prepared.x[to]!.toFixed(1)} ${unit}${saturation.runs.length > 1 ? ' and elsewhere' : ''}: measure again with less light or a shorter exposure.` });
  } else if (saturation) {
    warnings.push({ code: 'clipped', message: 'The curve is cut off at its greatest value: heights there are only lower limits.' });
  }
  if (spikes.length > 0) {
    const where = spikes.slice(0, 5).map((i) => prepared.x[i]!.toFixed(1)).join(', ');
    warnings.push({ code: 'spikes-removed', message: `${spikes.length} ${spikes.length === 1 ? 'spike' : 'spikes'} too narrow for the instrument ${spikes.length === 1 ? 'was' : 'were'} taken out (${where}${spikes.length > 5 ? ', …' : ''} ${unit}).` });
  }
  return warnings;
}

/** Colour of the luminescence, null for other methods. */
function colourOf({ x, ordinate }: PreparedSpectrum, detection: Detection, { method, laserNm }: AnalysisParameters): LuminescenceColourResult | null {
  if (method !== 'photoluminescence' || ordinate !== 'intensity') return null;
  return luminescenceColour({ nm: x, power: detection.smoothed, noise: detection.smoothedNoise, resolutionNm: detection.resolution, ...(laserNm === undefined ? {} : { laserNm }) });
}

/**
 * Everything one curve says, and the curves to draw. The same input and parameters give the same numbers.
 * Peaks come in nm (photoluminescence, absorption), cm-1 (infrared) or Raman shift (Raman).
 * Errors: a curve or an axis that can't be analysed, with what to do about it.
 */
export function analyseSpectrum(spectrum: Spectrum, parameters: AnalysisParameters): Result<Analysis, AnalysisError> {
  const corrected = correctAxis(spectrum, parameters.method, parameters.scale);
  const prepared = prepareSpectrum(corrected.spectrum, parameters);
  if (!prepared.ok) return prepared;
  const { x, y, unit, warnings } = prepared.value;
  const resolution = resolutionInUnit(parameters, spectrum.xUnit, unit, 0.5 * (x[0]! + x[x.length - 1]!));
  const detection = detectLines(x, y, { resolution, ...DETECTION[parameters.method], ...(parameters.baseline === undefined ? {} : { baseline: parameters.baseline }) });
  const reading = interpret(prepared.value, detection, parameters);
  const input: FindingInput = { ...reading, parameters };
  const all = [...corrected.warnings, ...warnings, ...conditioningWarnings(prepared.value, detection), ...reading.warnings];
  const result: AnalysisResult = {
    pipeline: PIPELINE_VERSION,
    tables: TABLES_VERSION,
    parameters,
    warnings: all,
    peaks: [...reading.peaks],
    diamondRaman: reading.diamondRaman?.result ?? null,
    infrared: reading.infrared && { ...reading.infrared.result, pathMm: reading.infrared.pathMm },
    ultraviolet: reading.ultraviolet && { edgeNm: reading.ultraviolet.edgeNm, ratio: reading.ultraviolet.ratio },
    luminescenceColour: colourOf(prepared.value, detection, parameters),
    findings: findingsFromAnalysis(input),
  };
  return ok({ result, curves: { x, raw: y, smoothed: detection.smoothed, baseline: detection.baseline } });
}

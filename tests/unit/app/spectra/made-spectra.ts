import type { AnalysisParameters, AnalysisResult } from '../../../../app/spectra/analysis.ts';
import { analyseSpectrum } from '../../../../app/spectra/analyse-spectrum.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { voigt } from '../../../../app/spectra/simulate/line-shapes.ts';
import type { Spectrum } from '../../../../app/spectra/spectrum.ts';

export type MadeLine = { readonly nm: number; readonly height: number; readonly fwhm: number };
export type MadeOptions = { readonly from?: number; readonly to?: number; readonly points?: number; readonly noise?: number; readonly seed?: number; readonly level?: (nm: number) => number };

/** Lines of known place, height and width on a level, with normal noise: the truth is what was put in. */
export function madeSpectrum(lines: readonly MadeLine[], options: MadeOptions = {}): Spectrum {
  const { from = 540, to = 900, points = 3600, noise = 10, seed = 1, level = () => 500 } = options;
  const r = seededRandom(seed);
  const x = Float64Array.from({ length: points }, (_, i) => from + ((to - from) * i) / (points - 1));
  const y = x.map((nm) => lines.reduce((sum, line) => sum + line.height * voigt(nm, line.nm, 0.5 * line.fwhm, 0.75 * line.fwhm), level(nm)) + noise * r.normal());
  return { x, y, xUnit: 'nm', yUnit: 'counts' };
}

export const PL: AnalysisParameters = { method: 'photoluminescence', laserNm: 532, temperatureK: 295, calibrationErrorNm: 0.1, resolution: 0.5 };

/** The result, where the analysis must succeed. */
export function analysed(spectrum: Spectrum, parameters: Partial<AnalysisParameters> = {}): AnalysisResult {
  const result = analyseSpectrum(spectrum, { ...PL, ...parameters });
  if (!result.ok) throw new Error(result.error.message);
  return result.value.result;
}

export const codes = (result: AnalysisResult): string[] => result.findings.map((finding) => finding.code);
export const centres = (result: AnalysisResult): string[] => result.peaks.flatMap((peak) => (peak.centre === null ? [] : [peak.centre]));
/** The line of diamond for a 532 nm laser, as a fine instrument shows it. */
export const RAMAN_532: MadeLine = { nm: 572.6, height: 3000, fwhm: 0.6 };

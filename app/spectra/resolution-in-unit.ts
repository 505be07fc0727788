import type { AnalysisParameters } from './analysis.ts';
import type { AnalysisUnit } from './prepare-spectrum.ts';
import type { XUnit } from './spectrum.ts';

/**
 * The stated resolution in the analysis unit. It is stated in nm for wavelength axes and in cm-1 for the others;
 * where the analysis changes the kind of axis, it is converted at `middle` (analysis unit). Null where none is stated.
 */
export function resolutionInUnit(parameters: AnalysisParameters, from: XUnit, to: AnalysisUnit, middle: number): number | null {
  const { resolution, laserNm } = parameters;
  if (resolution === undefined) return null;
  const statedInNm = from === 'nm' || from === 'nm-vacuum' || from === 'angstrom';
  if (statedInNm === (to === 'nm') || from === 'ev') return resolution;
  if (to === 'nm') return resolution * middle ** 2 * 1e-7;
  const nm = to === 'cm-1' ? 1e7 / middle : 1 / (1 / (laserNm ?? 532) - middle * 1e-7);
  return (resolution / nm ** 2) * 1e7;
}

import type { AnalysableMethod } from '../spectra/analysis.ts';
import type { YUnit } from '../spectra/spectrum.ts';

export type AnalysedUnits = { readonly xUnit: 'nm' | 'cm-1' | 'raman-shift'; readonly yUnit: YUnit };

/** Units of the curves that an analysis gives back: the axis of its method, and transmission turned into absorbance. */
export function analysedUnits(method: AnalysableMethod, stored: YUnit): AnalysedUnits {
  switch (method) {
    case 'photoluminescence': return { xUnit: 'nm', yUnit: stored };
    case 'raman': return { xUnit: 'raman-shift', yUnit: stored };
    case 'ultraviolet-transmission': return { xUnit: 'nm', yUnit: 'transmittance' };
    case 'absorption': return { xUnit: 'nm', yUnit: stored === 'absorption-coefficient' ? stored : 'absorbance' };
    case 'infrared': return { xUnit: 'cm-1', yUnit: stored === 'absorption-coefficient' ? stored : 'absorbance' };
  }
}

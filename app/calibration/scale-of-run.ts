import { z } from 'zod';
import type { Spectrum } from '../spectra/spectrum.ts';
import { airFromRamanShift, convertPosition } from '../spectra/convert-axis.ts';
import { DIAMOND_RAMAN_CM1 } from '../reference/reference-lines.ts';
import { applyCalibration, fitsAxis } from './apply-calibration.ts';
import { scaleMap } from './scale-fit.ts';
import type { ScaleUnit } from './standard.ts';

/** A calibration as an analysis is told of it. */
export const appliedScale = z.object({ calibrationId: z.string().max(60), at: z.string().max(40), fit: scaleMap });
export type AppliedScale = z.infer<typeof appliedScale>;

export type CorrectedAxis = { readonly spectrum: Spectrum; readonly warnings: readonly { readonly code: string; readonly message: string }[] };

/**
 * The curve with its axis corrected by the calibration of its instrument. Where the calibration does not speak about this axis the
 * curve stays as it is and a warning ('scale-not-applied') says so: its positions are still those of the instrument.
 */
export function correctAxis(spectrum: Spectrum, method: string, scale: AppliedScale | undefined): CorrectedAxis {
  if (!scale) return { spectrum, warnings: [] };
  // A Raman file may call its shift cm-1, and is read as shift.
  const xUnit = method === 'raman' && spectrum.xUnit === 'cm-1' && scale.fit.unit === 'raman-shift' ? 'raman-shift' : spectrum.xUnit;
  const applied = applyCalibration(scale.fit, { ...spectrum, xUnit });
  if (!applied.ok) return { spectrum, warnings: [{ code: 'scale-not-applied', message: `The instrument’s calibration was not applied. ${applied.error.message}` }] };
  const { range, unit } = scale.fit;
  if (!fitsAxis(scale.fit, xUnit)) return { spectrum: applied.value, warnings: [] };
  const [first, last] = [convertPosition(spectrum.x[0]!, xUnit, unit), convertPosition(spectrum.x.at(-1)!, xUnit, unit)];
  const beyond = Math.max(range[0] - Math.min(first, last), Math.max(first, last) - range[1]);
  // A quarter of the calibrated range beyond its ends, the straight continuation may be off by more than it says (judgement).
  const warnings = beyond > 0.25 * (range[1] - range[0])
    ? [{ code: 'scale-beyond-lines', message: `The scale was calibrated from ${range[0].toFixed(0)} to ${range[1].toFixed(0)} ${unit === 'nm' ? 'nm' : 'cm⁻¹'} only; positions farther out are less certain.` }] : [];
  return { spectrum: applied.value, warnings };
}

const GREATEST_ERROR_NM = 5;
/** However well a lamp fits, a scale moves a little with the warmth of the room until the next calibration (judgement). */
const LEAST_ERROR_NM = 0.02;
const within = (nm: number): number => Math.max(LEAST_ERROR_NM, Math.min(GREATEST_ERROR_NM, nm));

/** A scale's uncertainty in nm, as the naming of lines needs it: one of shifts, at the diamond line of the laser; null where that can't be said. */
export function errorInNm(unit: ScaleUnit, error: number, laserNm: number | null): number | null {
  if (unit === 'nm') return within(error);
  if (unit !== 'raman-shift' || laserNm === null) return null;
  const nm = airFromRamanShift(laserNm, DIAMOND_RAMAN_CM1);
  return within(nm * nm * 1e-7 * error);
}

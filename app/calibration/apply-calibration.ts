import { err, ok, type Result } from '../result.ts';
import type { Spectrum } from '../spectra/spectrum.ts';
import type { CalibrationError } from './calibration-error.ts';
import { correctionAt, type ScaleMap } from './scale-fit.ts';

const ANGSTROM_PER_NM = 10;

/** Whether a fit speaks about this curve's axis. */
export const fitsAxis = (fit: Pick<ScaleMap, 'unit'>, xUnit: Spectrum['xUnit']): boolean => xUnit === fit.unit || (xUnit === 'angstrom' && fit.unit === 'nm');

/**
 * The curve with corrected positions; points and their order stay.
 * Errors: 'unit-differs' where the axis is in another unit than the calibration; 'scale-folds' where corrected positions would change order.
 */
export function applyCalibration(fit: ScaleMap, spectrum: Spectrum): Result<Spectrum, CalibrationError> {
  if (!fitsAxis(fit, spectrum.xUnit)) {
    return err({ code: 'unit-differs', message: `The scale was calibrated in ${fit.unit}, the curve’s axis is in ${spectrum.xUnit}: calibrate in the unit of the files.` });
  }
  const factor = spectrum.xUnit === 'angstrom' ? ANGSTROM_PER_NM : 1;
  const x = spectrum.x.map((value) => value + factor * correctionAt(fit, value / factor));
  for (let i = 1; i < x.length; i++) {
    const before = spectrum.x[i]! - spectrum.x[i - 1]!;
    if (before !== 0 && Math.sign(x[i]! - x[i - 1]!) !== Math.sign(before)) {
      return err({ code: 'scale-folds', message: 'The calibration does not suit this curve: corrected, its positions would run back. Calibrate the instrument again over the whole range.' });
    }
  }
  return ok({ ...spectrum, x });
}

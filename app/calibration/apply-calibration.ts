import { err, ok, type Result } from '../result.ts';
import { convertPosition } from '../spectra/convert-axis.ts';
import { UNIT_NAMES, type Spectrum, type StatableXUnit } from '../spectra/spectrum.ts';
import type { CalibrationError } from './calibration-error.ts';
import { correctionAt, type ScaleMap } from './scale-fit.ts';

/** Whether a fit speaks about this curve's axis: wavelengths are one axis, however they are written. */
export const fitsAxis = (fit: Pick<ScaleMap, 'unit'>, xUnit: Spectrum['xUnit']): xUnit is StatableXUnit =>
  xUnit === fit.unit || ((xUnit === 'angstrom' || xUnit === 'nm-vacuum') && fit.unit === 'nm');

/**
 * The curve with corrected positions; points and their order stay.
 * Errors: 'unit-differs' where the axis is in another unit than the calibration; 'scale-folds' where corrected positions would change order.
 */
export function applyCalibration(fit: ScaleMap, spectrum: Spectrum): Result<Spectrum, CalibrationError> {
  const { xUnit } = spectrum;
  if (!fitsAxis(fit, xUnit)) {
    return err({ code: 'unit-differs', message: `The scale was calibrated in ${UNIT_NAMES[fit.unit]}, the curve’s axis is in ${UNIT_NAMES[xUnit]}: calibrate in the unit of the files.` });
  }
  const x = spectrum.x.map((value) => {
    const shown = convertPosition(value, xUnit, fit.unit);
    return convertPosition(shown + correctionAt(fit, shown), fit.unit, xUnit);
  });
  for (let i = 1; i < x.length; i++) {
    const before = spectrum.x[i]! - spectrum.x[i - 1]!;
    if (before !== 0 && Math.sign(x[i]! - x[i - 1]!) !== Math.sign(before)) {
      return err({ code: 'scale-folds', message: 'The calibration does not suit this curve: corrected, its positions would run back. Calibrate the instrument again over the whole range.' });
    }
  }
  return ok({ ...spectrum, x });
}

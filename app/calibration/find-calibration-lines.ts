import { err, ok, type Result } from '../result.ts';
import { detectLines } from '../spectra/detect-lines.ts';
import { convertPosition } from '../spectra/convert-axis.ts';
import { UNIT_NAMES, type Spectrum } from '../spectra/spectrum.ts';
import { median } from '../spectra/statistics.ts';
import { fitsAxis } from './apply-calibration.ts';
import type { CalibrationError } from './calibration-error.ts';
import type { CalibrationStandard } from './standard.ts';

export type MeasuredLine = { readonly position: number; readonly standardError: number; readonly height: number; readonly fwhm: number; readonly snr: number };
export type MeasuredLines = { readonly lines: readonly MeasuredLine[]; /** Points of the curve, ascending. */ readonly x: Float64Array; readonly y: Float64Array; readonly fwhm: number };

const LEAST_POINTS = 20;
/** Bands wider than the period become background; wider peaks are no lines (judgement). */
const WIDTHS = {
  emission: { nm: { baselinePeriod: 60, widest: 20 }, 'cm-1': { baselinePeriod: 250, widest: 80 }, 'raman-shift': { baselinePeriod: 300, widest: 80 } },
  absorption: { nm: { baselinePeriod: 120, widest: 40 }, 'cm-1': { baselinePeriod: 250, widest: 80 }, 'raman-shift': { baselinePeriod: 300, widest: 80 } },
} as const;
/** Standard error where a line's own fit did not converge, as a share of its width (judgement). */
const UNFITTED_SHARE = 0.1;

/** Finite points in rising order, positions as `place` gives them. */
function ascendingPoints({ x: shown, y }: Pick<Spectrum, 'x' | 'y'>, place: (value: number) => number): { x: Float64Array; y: Float64Array } | null {
  if (shown.length !== y.length) return null;
  const x = shown.map(place);
  const order = Array.from(x, (_, i) => i).filter((i) => Number.isFinite(x[i]!) && Number.isFinite(y[i]!)).sort((a, b) => x[a]! - x[b]!);
  const kept = order.filter((i, k) => k === 0 || x[i]! > x[order[k - 1]!]!);
  if (kept.length < LEAST_POINTS) return null;
  return { x: Float64Array.from(kept, (i) => x[i]!), y: Float64Array.from(kept, (i) => y[i]!) };
}

/** Whether lines hang down in this curve. Where the ordinate does not say: most points lie near the top. */
function hangsDown(yUnit: Spectrum['yUnit'], y: Float64Array): boolean {
  if (/transmittance|reflectance/.test(yUnit)) return true;
  if (yUnit === 'absorbance' || yUnit === 'absorption-coefficient') return false;
  let [least, most] = [Infinity, -Infinity];
  for (const value of y) { least = Math.min(least, value); most = Math.max(most, value); }
  return median(y) > 0.5 * (least + most);
}

/** The lines of a lamp's or standard's curve, positions in the standard's unit; those cut off at the detector's ceiling are left out. Errors: an axis in another unit, a curve without points or lines. */
export function findCalibrationLines(spectrum: Spectrum, standard: CalibrationStandard): Result<MeasuredLines, CalibrationError> {
  // A Raman file may call its shift cm-1.
  const xUnit = spectrum.xUnit === 'cm-1' && standard.unit === 'raman-shift' ? 'raman-shift' : spectrum.xUnit;
  if (!fitsAxis(standard, xUnit)) return err({ code: 'unit-differs', message: `The file’s axis is in ${UNIT_NAMES[xUnit]}, the lines of “${standard.name}” are in ${UNIT_NAMES[standard.unit]}: choose another standard, or state the unit of the axis.` });
  const points = ascendingPoints(spectrum, (value) => convertPosition(value, xUnit, standard.unit));
  if (!points) return err({ code: 'curve-unusable', message: 'The curve has too few points to find lines in it: record the standard again.' });
  const y = standard.shape === 'absorption' && hangsDown(spectrum.yUnit, points.y) ? points.y.map((value) => -value) : points.y;
  const detection = detectLines(points.x, y, { resolution: null, shotNoise: standard.shape === 'emission', ...WIDTHS[standard.shape][standard.unit] });
  if (detection.lines.length === 0) return err({ code: 'too-few-lines', message: `No line stands out in the curve: look whether it is that of “${standard.name}”, and record it with more light.` });
  const cut = (index: number): boolean => detection.saturation?.runs.some(([from, to]) => index >= from - 1 && index <= to + 1) ?? false;
  // A line on another's flank has no place of its own to calibrate by.
  const whole = detection.lines.filter((line) => !cut(line.index) && line.shoulder !== true);
  if (whole.length === 0) return err({ code: 'too-few-lines', message: 'Every line is cut off at the detector’s ceiling: record the standard again with less light or a shorter exposure.' });
  const lines = whole.map(({ position, standardError, height, fwhm, snr }) => ({ position, height, fwhm, snr, standardError: standardError ?? UNFITTED_SHARE * fwhm }));
  return ok({ lines, x: points.x, y: points.y, fwhm: median(lines.map((line) => line.fwhm)) });
}

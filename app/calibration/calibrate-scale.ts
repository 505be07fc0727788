import { err, ok, type Result } from '../result.ts';
import type { Spectrum } from '../spectra/spectrum.ts';
import { ASSIGN_DEFAULTS, assignLines, pairUp, SCALE_LIMITS, type ScaleLimits } from './assign-lines.ts';
import type { CalibrationError } from './calibration-error.ts';
import { findCalibrationLines } from './find-calibration-lines.ts';
import { fitScale } from './fit-scale.ts';
import { correctionAt, type ScaleFit } from './scale-fit.ts';
import { UNIT_WORDS, type CalibrationStandard } from './standard.ts';

export type Calibrated = {
  readonly fit: ScaleFit;
  /** Lines found in the curve that belong to no reference line. */
  readonly unassigned: readonly number[];
  /** The curve as read, ascending in the standard's unit, for the drawing. */
  readonly x: Float64Array;
  readonly y: Float64Array;
};

/** A true assignment leaves far less scatter than lines that fall near each other by chance: the limit, in line widths (judgement). */
const MOST_SCATTER_WIDTHS = 0.2;
/** So few lines fall in place by chance among many: then they must be this share of the curve's lines (judgement). */
const FEW_LINES = 6;
const LEAST_EXPLAINED = 1 / 3;
/** Second round: how near the fitted scale must put a line, in widths and in residuals of the first round. */
const SECOND_REACH = { widths: 0.3, residuals: 5 } as const;

/**
 * Calibrates a scale with the curve of a lamp or a standard: finds its lines, tells which is which, and fits the correction.
 * @param limits how far the scale may be off; 3 nm and 1 % unless stated
 * Errors: a curve in another unit or without lines, too few lines that fit, another lamp, two scales that fit alike.
 */
export function calibrateScale(spectrum: Spectrum, standard: CalibrationStandard, limits: ScaleLimits = SCALE_LIMITS[standard.unit]): Result<Calibrated, CalibrationError> {
  const found = findCalibrationLines(spectrum, standard);
  if (!found.ok) return found;
  const { lines, x, y, fwhm } = found.value;
  const assigned = assignLines(lines, standard, fwhm, [x[0]!, x.at(-1)!], limits);
  if (!assigned.ok) return assigned;
  const about = { standard: standard.id, unit: standard.unit };
  const first = fitScale(assigned.value.pairs, about, fwhm);
  const reach = first ? Math.max(SECOND_REACH.widths * fwhm, SECOND_REACH.residuals * first.leaveOneOutRms) : 0;
  const pairs = first ? pairUp(lines, assigned.value.references, (position) => position + correctionAt(first, position), Math.min(reach, ASSIGN_DEFAULTS.reachWidths * fwhm)) : [];
  const fit = fitScale(pairs, about, fwhm);
  if (!fit || fit.lines.filter((line) => line.used).length < ASSIGN_DEFAULTS.leastLines) {
    return err({ code: 'too-few-lines', message: `Fewer than ${ASSIGN_DEFAULTS.leastLines} lines of “${standard.name}” agree on one scale: record the lamp with less noise or over a wider range.` });
  }
  if (fit.leaveOneOutRms > MOST_SCATTER_WIDTHS * fwhm) {
    return err({ code: 'does-not-fit', message: `Lines lie near those of “${standard.name}” but scatter by ${fit.leaveOneOutRms.toFixed(2)} ${UNIT_WORDS[standard.unit]}, as other lamps’ lines do by chance: choose the lamp that was used.` });
  }
  const used = fit.lines.filter((line) => line.used).length;
  if (used < FEW_LINES && used < LEAST_EXPLAINED * lines.length) {
    return err({ code: 'does-not-fit', message: `Only ${used} of the curve’s ${lines.length} lines belong to “${standard.name}”, as few as fall in place by chance: choose the lamp that was used.` });
  }
  const known = new Set(fit.lines.map((line) => line.measured));
  return ok({ fit, x, y, unassigned: lines.map((line) => line.position).filter((position) => !known.has(position)) });
}

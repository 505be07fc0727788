import { err, ok, type Result } from '../result.ts';
import { DETECTION } from '../spectra/analyse-spectrum.ts';
import { MOST_LASER_ERROR_NM } from '../spectra/check-laser.ts';
import { convertPosition } from '../spectra/convert-axis.ts';
import { detectLines } from '../spectra/detect-lines.ts';
import { risingPoints } from '../spectra/rising-points.ts';
import { STATABLE_X_UNITS, UNIT_NAMES, type Spectrum, type StatableXUnit } from '../spectra/spectrum.ts';
import type { CalibrationError } from './calibration-error.ts';
import { laserFromDiamond, type LaserFromDiamond } from './laser-from-diamond.ts';
import { correctAxis, type AppliedScale } from './scale-of-run.ts';

export type FoundLaser = LaserFromDiamond & {
  /** Where the diamond line lies, nm in air, with the standard error of its fit. */
  readonly foundNm: number;
  readonly standardErrorNm: number;
};
export type LaserSearch = {
  /** What the laser is called, nm in air. */
  readonly nominalNm: number;
  /** Calibration by which positions are corrected first. */
  readonly scale?: AppliedScale | undefined;
  /** Standard uncertainty of the wavelength scale, nm. */
  readonly scaleErrorNm: number;
};

const LEAST_POINTS = 20;
/** Signal over noise that a line needs to be measured by (judgement). */
const LEAST_SNR = 15;
/** Small instruments show the diamond line up to this wide, cm-1 (judgement). */
const WIDEST_CM1 = 60;
/** Another line this strong beside it could be the diamond line as well (judgement). */
const RIVAL_SHARE = 0.5;
/** Standard error where the line's own fit did not converge, as a share of its width (judgement). */
const UNFITTED_SHARE = 0.1;

/**
 * The true wavelength of a laser from the curve of a known diamond at room temperature: the strongest narrow line that the diamond line
 * can be for a laser within 6 nm of its nominal wavelength.
 * Errors: 'unit-differs' for an axis without absolute wavelengths, 'curve-unusable', 'too-few-lines' where no line stands out, 'ambiguous'.
 */
export function findLaser(spectrum: Spectrum, { nominalNm, scale, scaleErrorNm }: LaserSearch): Result<FoundLaser, CalibrationError> {
  const { spectrum: corrected, warnings } = correctAxis(spectrum, 'photoluminescence', scale);
  if (warnings.some((warning) => warning.code === 'scale-not-applied')) return err({ code: 'unit-differs', message: warnings[0]!.message });
  const { xUnit } = corrected;
  if (xUnit === 'raman-shift' || !(STATABLE_X_UNITS as readonly string[]).includes(xUnit)) {
    return err({ code: 'unit-differs', message: `The file’s axis is in ${UNIT_NAMES[xUnit]}, in which the laser is already assumed: save the curve with its wavelength axis.` });
  }
  const { x, y } = risingPoints(corrected.x.map((at) => convertPosition(at, xUnit as StatableXUnit, 'nm')), corrected.y);
  if (x.length < LEAST_POINTS) return err({ code: 'curve-unusable', message: 'The curve has too few points to find a line in it: record the diamond again.' });
  const detection = detectLines(x, y, { resolution: null, ...DETECTION.photoluminescence });
  const cut = (index: number): boolean => detection.saturation?.runs.some(([from, to]) => index >= from - 1 && index <= to + 1) ?? false;
  const candidates = detection.lines
    .filter((line) => line.snr >= LEAST_SNR && line.shoulder !== true && line.fwhm <= WIDEST_CM1 * line.position ** 2 * 1e-7)
    .filter((line) => Math.abs(laserFromDiamond(line.position, 0).laserNm - nominalNm) <= MOST_LASER_ERROR_NM)
    .sort((a, b) => b.height - a.height);
  const [line, rival] = candidates;
  if (!line) return err({ code: 'too-few-lines', message: `No narrow line stands where a laser near ${nominalNm} nm puts the diamond line: check the nominal wavelength, and record a diamond without strong luminescence, with points close enough to show the line.` });
  if (cut(line.index)) return err({ code: 'curve-unusable', message: 'The diamond line is cut off at the detector’s ceiling: record it again with less light or a shorter exposure.' });
  if (rival && rival.height >= RIVAL_SHARE * line.height) {
    return err({ code: 'ambiguous', message: `Lines at ${line.position.toFixed(2)} and ${rival.position.toFixed(2)} nm could both be the diamond line: record a diamond that shows no other narrow line there.` });
  }
  const standardErrorNm = line.standardError ?? UNFITTED_SHARE * line.fwhm;
  return ok({ ...laserFromDiamond(line.position, Math.hypot(standardErrorNm, scaleErrorNm)), foundNm: line.position, standardErrorNm });
}

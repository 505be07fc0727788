import { z } from 'zod';
import { SCALE_USES } from '../calibration/calibration-words.ts';
import { scaleFit } from '../calibration/scale-fit.ts';
import { SCALE_UNITS } from '../calibration/standard.ts';
import { STATABLE_X_UNITS } from '../spectra/spectrum.ts';
import { bytes, digest, floats, id, instant, line } from './common.ts';
import { changes, reads } from './operation.ts';

/** The calibration that governs an instrument's runs. */
export const scaleView = z.object({
  id, at: instant, by: z.string(), standard: z.string(), unit: z.enum(SCALE_UNITS), use: z.enum(SCALE_USES),
  /** Standard uncertainty of positions, in the unit. */
  error: z.number(), fileName: z.string(), fileSha256: digest,
});
export type ScaleView = z.infer<typeof scaleView>;

const lampFile = {
  instrumentId: id, name: line(255), bytes, xUnit: z.enum(STATABLE_X_UNITS).optional(),
  standard: z.string().min(1, 'Choose the lamp or standard.').max(60),
  /** Positions of a certificate in place of the tabulated ones. */
  ownLines: z.array(z.strictObject({ position: z.number().positive().max(100_000), uncertainty: z.number().positive().max(50) }))
    .min(4, 'At least four lines are needed.').max(200, 'At most 200 lines.').nullable(),
};

/** What a lamp's curve says about the scale, before anything is kept. */
export const calibrationTrial = z.object({
  sha256: digest, standard: z.string(), fit: scaleFit, unassigned: z.array(z.number()),
  warnings: z.array(z.object({ code: z.string(), message: z.string(), line: z.number().optional() })),
  /** The curve, ascending in the unit of the fit. */
  x: floats, y: floats,
});
export type CalibrationTrial = z.infer<typeof calibrationTrial>;

export const diamondFile = {
  instrumentId: id, name: line(255), bytes, xUnit: z.enum(STATABLE_X_UNITS).optional(),
  /** What the laser is called, nm in air. */
  nominalNm: z.number().min(200, 'Write the laser’s nominal wavelength in nm.').max(1100, 'Write the laser’s nominal wavelength in nm.'),
};

/** The laser by the diamond line of a known stone, before anything is kept. Wavelengths in air, nm. */
export const laserTrial = z.object({
  sha256: digest, laserNm: z.number(), uncertaintyNm: z.number(), foundNm: z.number(), standardErrorNm: z.number(),
  /** What is to be kept, in one sentence. */
  words: z.string(),
  /** False where the wavelength scale itself was never calibrated. */
  scaled: z.boolean(),
});
export type LaserTrial = z.infer<typeof laserTrial>;

export const calibrationContract = {
  'instruments.tryCalibration': reads(['examiner', 'second-examiner', 'manager'], z.strictObject(lampFile), calibrationTrial),
  /** Keeps the fit and the digest of the lamp's curve, and counts as a check of the instrument. */
  'instruments.calibrate': changes(['examiner', 'second-examiner', 'manager'], z.strictObject({ ...lampFile, use: z.enum(SCALE_USES), passed: z.boolean() }), scaleView),
  'instruments.calibrations': reads('anyone', z.strictObject({ instrumentId: id }), z.array(scaleView.extend({ fit: scaleFit }))),
};

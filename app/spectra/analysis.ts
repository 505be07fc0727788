import { z } from 'zod';
import { appliedScale } from '../calibration/scale-of-run.ts';
import { luminescenceColourResult } from '../colour/luminescence-colour.ts';
import { findingFact } from '../domain/finding.ts';
import { BASELINES } from './baseline-of.ts';
import { X_UNITS } from './spectrum.ts';

/** The methods whose curves can be analysed. */
export const ANALYSABLE = ['photoluminescence', 'raman', 'absorption', 'infrared', 'ultraviolet-transmission'] as const;
export const analysableMethod = z.enum(ANALYSABLE);
export type AnalysableMethod = z.infer<typeof analysableMethod>;

/** What the analysis is told; stored with its result, so that running it again gives the same numbers. */
export const analysisParameters = z.object({
  method: analysableMethod,
  /** Calibrated laser wavelength in air, nm. Needed for Raman shift and the diamond check. */
  laserNm: z.number().min(200).max(1100).optional(),
  /** Stone's temperature during the run, kelvin. */
  temperatureK: z.number().min(4).max(400).default(295),
  /** Instrument resolution, full width at half maximum, in the axis' unit (nm or cm-1). */
  resolution: z.number().positive().max(100).optional(),
  /** How far the wavelength scale may be off, nm, one standard deviation. */
  calibrationErrorNm: z.number().min(0).max(5).default(0.1),
  /** Way to the baseline; the program's own where none is named. */
  baseline: z.enum(BASELINES).optional(),
  /** What the diamond lattice absorbs at the minimum near 1992 cm-1, cm-1 base e; infrared only. */
  twoPhononCoefficient: z.number().min(10).max(14).optional(),
  /** Time at depth for the model temperature of aggregated nitrogen, 10⁹ years; infrared only. */
  residenceGa: z.number().min(0.001).max(4.5).optional(),
  /** Calibration of the instrument by which the axis is corrected first. */
  scale: appliedScale.optional(),
});
export type AnalysisParameters = z.infer<typeof analysisParameters>;

export const peakResult = z.object({
  position: z.number(),
  unit: z.enum(X_UNITS),
  height: z.number(),
  fwhm: z.number(),
  prominence: z.number(),
  /** Fitted height over the standard deviation of the raw curve's noise nearby. */
  snr: z.number(),
  /** Standard error of the position from the fit, same unit; null where no fit converged. */
  standardError: z.number().nullable(),
  /** Id in the table of optical centres (or another reference line), or null. Null too where several fit and none can be preferred: then they stand in ambiguousWith. */
  centre: z.string().nullable(),
  /** position minus the reference position, same unit; null without centre. */
  offset: z.number().nullable(),
  /** Ids that can't be told apart from the centre here; without a centre, all candidates. */
  ambiguousWith: z.array(z.string()),
  /** Id of the line whose vibronic (or second-order Raman) sideband this is. Where that line is itself ambiguous: the likeliest, and ambiguousWith holds all that it may be. */
  sidebandOf: z.string().nullable(),
});
export type PeakResult = z.infer<typeof peakResult>;

export const diamondRamanResult = z.object({
  /** Expected wavelength in air, nm, of the 1332.4 cm-1 line for this laser. */
  expectedNm: z.number(),
  foundNm: z.number().nullable(),
  shiftCm1: z.number().nullable(),
  present: z.boolean(),
  state: z.enum(['present', 'absent', 'masked']),
  /** Smallest line height that would have been seen, ordinate units; null where it can't be said. */
  detectionLimit: z.number().nullable(),
});
export type DiamondRamanResult = z.infer<typeof diamondRamanResult>;

export const analysisWarning = z.object({ code: z.string(), message: z.string() });
export type AnalysisWarning = z.infer<typeof analysisWarning>;

export const infraredResult = z.object({
  type: z.enum(['IaA', 'IaB', 'IaAB', 'Ib', 'IIa', 'IIb', 'not-determined']),
  /** Nitrogen, atomic ppm, by component. */
  nitrogenPpm: z.object({ A: z.number(), B: z.number(), C: z.number(), Nplus: z.number() }),
  uncertaintyPpm: z.object({ A: z.number(), B: z.number(), C: z.number(), Nplus: z.number() }),
  detectionLimitPpm: z.number(),
  boronPpm: z.number().nullable(),
  /** Peak absorption coefficients, cm-1 base e, or null where not seen. */
  line3107: z.number().nullable(),
  line3123: z.number().nullable(),
  platelet: z.number().nullable(),
  aggregationPercent: z.number().nullable(),
  /** Temperature at which that aggregation takes the residence time, in one even stage, °C; null without both A and B. */
  modelTemperature: z.object({ celsius: z.number(), uncertainty: z.number(), residenceGa: z.number() }).nullable().optional(),
  /** Covariance of A, B, C and N+, ppm², row-major 4×4. */
  covariancePpm: z.array(z.number()).length(16).optional(),
  /** Standard deviation of what the components leave unexplained, cm-1 base e; null where nothing was fitted. */
  residual: z.number().nullable().optional(),
  /** Light path through the stone by the two-phonon absorption, mm; null where it can't be told. */
  pathMm: z.number().nullable().optional(),
});
export type InfraredResult = z.infer<typeof infraredResult>;

/** Everything one curve says. */
export const analysisResult = z.object({
  pipeline: z.string(),
  tables: z.string(),
  parameters: analysisParameters,
  warnings: z.array(analysisWarning),
  peaks: z.array(peakResult),
  diamondRaman: diamondRamanResult.nullable(),
  infrared: infraredResult.nullable(),
  ultraviolet: z.object({ edgeNm: z.number().nullable(), ratio: z.number().nullable() }).nullable(),
  /** Colour of photoluminescence as the eye sees it; null where the curve does not carry it. */
  luminescenceColour: luminescenceColourResult.nullable().optional(),
  findings: z.array(findingFact),
});
export type AnalysisResult = z.infer<typeof analysisResult>;

/** Curves that the view draws but that are not stored: recomputed from the same parameters. Same length as the analysed x. */
export type ProcessedCurves = {
  readonly x: Float64Array;
  readonly raw: Float64Array;
  readonly smoothed: Float64Array;
  readonly baseline: Float64Array;
};

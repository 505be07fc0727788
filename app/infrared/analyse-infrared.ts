import type { AnalysisParameters, AnalysisWarning, InfraredResult } from '../spectra/analysis.ts';
import type { Detection } from '../spectra/detect-lines.ts';
import type { PreparedSpectrum } from '../spectra/prepare-spectrum.ts';
import { aggregationTemperature, aggregationTemperatureError, RESIDENCE_GA } from './aggregation.ts';
import type { InfraredReading } from './infrared-reading.ts';
import { artefactsOf } from './infrared-artefacts.ts';
import { LINES, measureBoron, measureLine } from './infrared-lines.ts';
import type { NitrogenFit } from './nitrogen.ts';
import { fitNitrogen } from './nitrogen.ts';
import type { Normalisation } from './normalise.ts';
import { normalise } from './normalise.ts';

/** The lattice must explain this share of the two-phonon region before the curve counts as diamond's (judgement). */
const LEAST_AGREEMENT = 0.9;
/** Ratio of B to all aggregated nitrogen, per cent, below and above which a stone is IaA or IaB (conventions vary). */
const PURE_PERCENT = 10;
/** A limit above this can't carry the word "IIa", ppm. */
const MOST_LIMIT_FOR_II = 15;
/** ppm of uncompensated boron per cm-2 of the 2802 line: from memory, unconfirmed; uncertainty 30 % or more. */
const BORON_PPM_PER_AREA = 0.00105;
/** A aggregates, ppm, for which half of the 1290 cm-1 band of one ppm of boron could pass: 16.5 / 0.035 / 2 (0.035 from memory). */
const BORON_AS_NITROGEN = 235;
/** The CVD line is not claimed by coarser instruments than this, cm-1. */
const MOST_RESOLUTION_3123 = 8;
/** Absorption coefficient in the one-phonon region that saturates with this absorbance. */
const MOST_ABSORBANCE = 2.5;

type Typed = Pick<InfraredResult, 'type' | 'aggregationPercent'>;

/** Type by what stands out of three standard deviations and of the limit. */
function typeOf(fit: NitrogenFit, boronPpm: number | null): Typed {
  const { ppm, uncertainty, detectionLimitPpm: limit } = fit;
  const seen = (value: number, error: number): boolean => value > 3 * error || (value > limit && value > 2 * error);
  const aggregated = ppm.A + ppm.B;
  const aggregatedError = Math.hypot(uncertainty.A, uncertainty.B);
  // Aggregates beside boron must exceed what boron's own band could leave behind.
  const leftByBoron = boronPpm === null ? 0 : boronPpm * BORON_AS_NITROGEN;
  const hasAggregates = aggregated > limit + leftByBoron && (seen(ppm.A, uncertainty.A) || seen(ppm.B, uncertainty.B) || aggregated > 3 * aggregatedError);
  const hasC = ppm.C > limit && ppm.C > 3 * uncertainty.C;
  if (hasC && ppm.C > aggregated) return { type: 'Ib', aggregationPercent: null };
  if (hasAggregates) {
    const percent = (100 * ppm.B) / aggregated;
    return { type: percent < PURE_PERCENT ? 'IaA' : percent > 100 - PURE_PERCENT ? 'IaB' : 'IaAB', aggregationPercent: percent };
  }
  if (boronPpm !== null) return { type: 'IIb', aggregationPercent: null };
  return { type: limit <= MOST_LIMIT_FOR_II ? 'IIa' : 'not-determined', aggregationPercent: null };
}

/** Both aggregates must stand out this clearly, in standard deviations, before their ratio means a temperature (judgement). */
const LEAST_SIGMAS_FOR_TEMPERATURE = 2;

function modelTemperature({ ppm: { A, B }, uncertainty, covariance }: NitrogenFit, residenceGa: number): InfraredResult['modelTemperature'] {
  if (A < LEAST_SIGMAS_FOR_TEMPERATURE * uncertainty.A || B < LEAST_SIGMAS_FOR_TEMPERATURE * uncertainty.B) return null;
  const celsius = aggregationTemperature(A + B, B / (A + B), residenceGa);
  if (celsius === null) return null;
  return { celsius, uncertainty: aggregationTemperatureError(A, B, celsius, { aa: covariance[0]!, ab: covariance[1]!, bb: covariance[5]! }), residenceGa };
}

/** More nitrogen than any diamond holds: nothing is excluded by a curve that could not be read. */
const NOTHING_EXCLUDED_PPM = 10_000;
const NOTHING: InfraredResult = {
  type: 'not-determined', nitrogenPpm: { A: 0, B: 0, C: 0, Nplus: 0 }, uncertaintyPpm: { A: 0, B: 0, C: 0, Nplus: 0 }, detectionLimitPpm: NOTHING_EXCLUDED_PPM,
  boronPpm: null, line3107: null, line3123: null, platelet: null, aggregationPercent: null, modelTemperature: null, residual: null,
};
const undetermined = (latticeSeen: boolean | null, pathMm: number | null): InfraredReading => ({
  result: NOTHING, pathMm, plateletCm1: null, lineErrors: { line3107: 0, line3123: 0, platelet: 0 }, latticeSeen,
});

function onePhononSaturated(prepared: PreparedSpectrum): boolean {
  if (prepared.ordinate !== 'absorbance') return false;
  for (let i = 0; i < prepared.x.length; i++) if (prepared.x[i]! > 1000 && prepared.x[i]! < 1400 && prepared.y[i]! > MOST_ABSORBANCE) return true;
  return false;
}

/** Whether the curve has a flat top where the nitrogen bands are. */
const cutOffInNitrogen = (x: Float64Array, detection: Detection): boolean => (detection.saturation?.runs ?? []).some(([a, b]) => Math.max(x[a]!, x[b]!) > 1000 && Math.min(x[a]!, x[b]!) < 1400);

/** A nitrogen region cut off at the top has lost the shape that tells the components apart: neither type nor amounts follow from it. Lines elsewhere stay. */
const withoutType = ({ result: { line3107, line3123 }, ...reading }: InfraredReading): InfraredReading => ({ ...reading, plateletCm1: null, result: { ...NOTHING, line3107, line3123 } });

/** Uncompensated boron, ppm, or null where its 2802 cm-1 line does not stand out. */
function boronOf(x: Float64Array, alpha: Float64Array): number | null {
  const boron = measureBoron(x, alpha);
  return boron !== null && boron.areaCm2 > 5 * boron.areaError && boron.height > 0.06 ? boron.areaCm2 * BORON_PPM_PER_AREA : null;
}

function measure(prepared: PreparedSpectrum, detection: Detection, scale: Normalisation, nitrogen: NitrogenFit, boronPpm: number | null, parameters: AnalysisParameters): InfraredReading {
  const { x } = prepared;
  const resolution = parameters.resolution ?? Math.max(2 * detection.step, 1);
  const typed = typeOf(nitrogen, boronPpm);
  const perAlpha = scale.pathCm === null ? 1 : Math.LN10 / scale.pathCm;
  const noise = detection.noise.map((value) => value * perAlpha);
  const n3vh = measureLine(x, scale.alpha, noise, LINES.n3vh);
  const nvh = resolution <= MOST_RESOLUTION_3123 ? measureLine(x, scale.alpha, noise, LINES.nvh) : null;
  const platelet = measureLine(x, scale.alpha, noise, LINES.platelet);
  return {
    result: {
      ...typed,
      nitrogenPpm: { ...nitrogen.ppm },
      uncertaintyPpm: { ...nitrogen.uncertainty },
      detectionLimitPpm: nitrogen.detectionLimitPpm,
      boronPpm,
      line3107: n3vh?.height ?? null,
      line3123: nvh?.height ?? null,
      platelet: platelet?.height ?? null,
      modelTemperature: typed.aggregationPercent === null ? null : modelTemperature(nitrogen, parameters.residenceGa ?? RESIDENCE_GA),
      covariancePpm: [...nitrogen.covariance],
      residual: nitrogen.residual,
    },
    pathMm: scale.pathCm === null ? null : 10 * scale.pathCm,
    plateletCm1: platelet?.position ?? null,
    lineErrors: { line3107: n3vh?.heightError ?? 0, line3123: nvh?.heightError ?? 0, platelet: platelet?.heightError ?? 0 },
    latticeSeen: true,
  };
}

/**
 * Type, nitrogen, hydrogen and boron of an infrared curve. Nothing is claimed where the lattice's own absorption
 * is not covered, does not look like diamond's, or is saturated beyond use.
 */
export function analyseInfrared(prepared: PreparedSpectrum, detection: Detection, parameters: AnalysisParameters): { reading: InfraredReading; warnings: AnalysisWarning[] } {
  const { x } = prepared;
  const warnings: AnalysisWarning[] = [];
  const scale = normalise(x, prepared.y, prepared.ordinate === 'absorption-coefficient', parameters.twoPhononCoefficient);
  if (scale === null) {
    warnings.push({ code: 'two-phonon-not-covered', message: 'The curve does not cover 1900–2700 cm⁻¹, which sets the scale: measure from 1000 to at least 2800 cm⁻¹.' });
    return { reading: undetermined(null, null), warnings };
  }
  const pathMm = scale.pathCm === null ? null : 10 * scale.pathCm;
  if (scale.saturated) warnings.push({ code: 'two-phonon-saturated', message: 'The two-phonon region is saturated; the scale was taken from its weaker shoulder and is uncertain. Use a shorter path.' });
  if (scale.agreement < LEAST_AGREEMENT) {
    warnings.push({ code: 'no-two-phonon', message: 'The region 1900–2700 cm⁻¹ does not look like diamond’s: no diamond in the beam, or a curve too poor to use.' });
    return { reading: undetermined(false, pathMm), warnings };
  }
  const boronPpm = boronOf(x, scale.alpha);
  const nitrogen = fitNitrogen(x, scale.alpha, boronPpm !== null);
  if (nitrogen === null) {
    warnings.push({ code: 'one-phonon-not-covered', message: 'The curve does not cover 1000–1420 cm⁻¹, where nitrogen shows: type and nitrogen can’t be given.' });
    return { reading: undetermined(true, pathMm), warnings };
  }
  const cutOff = cutOffInNitrogen(x, detection);
  const saturated = cutOff || onePhononSaturated(prepared);
  if (saturated) warnings.push({ code: 'one-phonon-saturated', message: 'The nitrogen region is saturated: neither type nor amounts follow from it. Use a shorter path.' });
  warnings.push(...artefactsOf(x, prepared.y, scale));
  const reading = measure(prepared, detection, scale, nitrogen, boronPpm, parameters);
  const shapeLost = cutOff || (saturated && (scale.saturated || reading.result.type === 'Ib'));
  return { reading: shapeLost ? withoutType(reading) : reading, warnings };
}

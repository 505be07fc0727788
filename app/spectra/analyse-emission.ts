import type { AnalysisParameters, AnalysisWarning, PeakResult } from './analysis.ts';
import { artefactWarnings } from './artefact-warnings.ts';
import { checkLaser } from './check-laser.ts';
import type { DetectedLine, Detection } from './detect-lines.ts';
import type { DiamondRaman } from './diamond-raman.ts';
import { findDiamondRaman, WIDEST_CM1 } from './diamond-raman.ts';
import { doubtRamanOfOthers } from './doubt-raman-of-others.ts';
import type { EmissionScale } from './emission-scale.ts';
import { emissionScale, widthCm1 } from './emission-scale.ts';
import type { FindingInput } from './finding-input.ts';
import type { SimulantMatch } from './identify-simulant.ts';
import { identifySimulant } from './identify-simulant.ts';
import type { Match, MatchContext } from './match-centres.ts';
import { matchCentres, RAMAN_LINE } from './match-centres.ts';
import type { PreparedSpectrum } from './prepare-spectrum.ts';
import { isSecondOrder } from './second-order-raman.ts';

export { RAMAN_LINE as RAMAN_ID } from './match-centres.ts';
/** Above this residual of the diamond line, nm, positions are trusted less and the user is told (judgement). */
const CALIBRATION_ALARM_NM = 0.3;
/** Among luminescence one line may fall on a Raman line by chance; two do not. */
const LEAST_SIMULANT_LINES = { nm: 2, 'raman-shift': 1 } as const;
/** Centres common enough to be mistaken for the diamond line where the instrument can't part them. */
const RAMAN_RIVALS: readonly string[] = ['NV0', 'N3', 'H3', 'SIV'];

type Reading = Pick<FindingInput, 'peaks' | 'named' | 'diamondRaman' | 'simulant' | 'warnings'>;
type Named = { readonly matches: readonly Match[]; /** Place of the diamond line among the lines, or -1. */ readonly ramanAt: number; readonly context: MatchContext };

function lookForRaman(prepared: PreparedSpectrum, detection: Detection, parameters: AnalysisParameters, scale: EmissionScale, context: MatchContext): DiamondRaman | null {
  const provisional = scale.canName ? matchCentres(scale.inNm, context) : [];
  return findDiamondRaman({
    x: prepared.x, unit: scale.unit, detection, laserNm: parameters.laserNm, temperatureK: parameters.temperatureK,
    calibrationErrorNm: parameters.calibrationErrorNm, resolutionStated: parameters.resolution !== undefined,
    isNamed: (line) => (provisional[detection.lines.indexOf(line)]?.centre ?? null) !== null,
  });
}

/** How far the diamond line lies from where the laser puts it, nm, where that is alarming. */
function alarmingResidual(raman: DiamondRaman | null): number | null {
  if (raman === null || raman.result.foundNm === null) return null;
  const residual = raman.result.foundNm - raman.result.expectedNm;
  return Math.abs(residual) > CALIBRATION_ALARM_NM ? residual : null;
}

const residualWarning = (residual: number): AnalysisWarning => ({
  code: 'calibration-residual',
  message: `The diamond line lies ${residual > 0 ? '+' : '−'}${Math.abs(residual).toFixed(2)} nm from where the laser puts it: check the wavelength scale and the laser wavelength; positions were trusted less.`,
});

/** Names all lines but the diamond line, which is no optical centre, however near one may lie. */
function nameLines(detection: Detection, scale: EmissionScale, raman: DiamondRaman | null, { laserNm, method }: AnalysisParameters, context: MatchContext): Named {
  const ramanAt = raman?.line ? detection.lines.indexOf(raman.line) : -1;
  if (!scale.canName) return { matches: [], ramanAt, context };
  const missing = raman && !raman.line ? { missingRamanNm: raman.result.expectedNm } : {};
  const named = matchCentres(scale.inNm.filter((_, k) => k !== ramanAt), { ...context, ...missing });
  const inRaman = method === 'raman';
  return { matches: laserNm === undefined || (ramanAt >= 0 && !inRaman) ? named : doubtRamanOfOthers(named, scale.laserNm, inRaman ? 'raman' : 'photoluminescence'), ramanAt, context };
}

/** Centres that the diamond line alone would have been taken for, and that no other line shows. */
function rivalsOfRaman(scale: EmissionScale, { matches, ramanAt, context }: Named): string[] {
  if (ramanAt < 0 || !scale.canName) return [];
  const match = matchCentres([scale.inNm[ramanAt]!], context)[0];
  const rivals = match ? [...(match.centre ? [match.centre.id] : []), ...match.ambiguousWith].filter((id) => RAMAN_RIVALS.includes(id)) : [];
  return matches.some((other) => other.centre !== null && rivals.includes(other.centre.id)) ? [] : rivals;
}

function lookForSimulant(prepared: PreparedSpectrum, detection: Detection, scale: EmissionScale, raman: DiamondRaman | null): SimulantMatch | null {
  if (!scale.canShift || raman?.result.state === 'present') return null;
  const lines = detection.lines.map((line, k) => ({ line: k, shiftCm1: scale.toShift(line.position), height: line.height, snr: line.snr }));
  return identifySimulant(lines, [scale.toShift(prepared.x[0]!), scale.toShift(prepared.x[prepared.x.length - 1]!)], LEAST_SIMULANT_LINES[scale.unit]);
}

function peakOf(line: DetectedLine, unit: PeakResult['unit'], name: Partial<Pick<PeakResult, 'centre' | 'offset' | 'ambiguousWith' | 'sidebandOf'>>): PeakResult {
  return {
    position: line.position, unit, height: line.height, fwhm: line.fwhm, prominence: line.prominence, snr: line.snr, standardError: line.standardError,
    centre: null, offset: null, ambiguousWith: [], sidebandOf: null, ...name,
  };
}

function toPeaks(detection: Detection, scale: EmissionScale, named: Named, raman: DiamondRaman | null, rivals: readonly string[], simulant: SimulantMatch | null): PeakResult[] {
  const { matches, ramanAt } = named;
  const byLine = new Map(matches.map((match) => [match.line, match]));
  const ramanLine = ramanAt >= 0 ? scale.inNm[ramanAt]! : null;
  return detection.lines.map((line, k) => {
    const offsetFrom = (nm: number): number => line.position - scale.fromNm(nm);
    if (k === ramanAt && raman) {
      return peakOf(line, scale.unit, rivals.length > 0 ? { ambiguousWith: [RAMAN_LINE, ...rivals] } : { centre: RAMAN_LINE, offset: offsetFrom(raman.result.expectedNm) });
    }
    const ofSimulant = simulant?.found.find((found) => found.line === k);
    if (simulant && ofSimulant) return peakOf(line, scale.unit, { centre: simulant.simulant.id, offset: ofSimulant.shiftCm1 === line.position ? line.position - ofSimulant.referenceCm1 : null });
    const inNm = scale.inNm[k]!;
    const match = byLine.get(inNm);
    if (ramanLine && rivals.length === 0 && scale.canShift && isSecondOrder(inNm, scale.toShift(line.position), match, matches, ramanLine)) return peakOf(line, scale.unit, { sidebandOf: RAMAN_LINE });
    if (!match) return peakOf(line, scale.unit, {});
    return peakOf(line, scale.unit, {
      centre: match.centre?.id ?? null, offset: match.expectedNm === null ? null : offsetFrom(match.expectedNm), ambiguousWith: [...match.ambiguousWith], sidebandOf: match.sidebandOf,
    });
  });
}

/** Wider than instruments of a known resolution show the diamond line: without one it was taken for it all the same. */
function wideRaman(raman: DiamondRaman | null, scale: EmissionScale, at: number): AnalysisWarning[] {
  if (raman?.result.state !== 'present' || at < 0) return [];
  const width = widthCm1(scale.inNm[at]!);
  return width <= WIDEST_CM1.resolutionStated ? [] : [{
    code: 'diamond-line-wide', message: `The diamond line is ${width.toFixed(0)} cm⁻¹ wide, as only coarse instruments show it: state the instrument’s resolution, so that it can be judged.`,
  }];
}

/** A line that only a cooled stone would show so narrow, in a run said to be warm. */
function temperatureWarnings(matches: readonly Match[]): AnalysisWarning[] {
  const cold = matches.find((match) => match.asCold);
  return cold ? [{ code: 'narrow-for-temperature', message: `The line at ${cold.line.position.toFixed(2)} nm (${cold.centre?.name ?? ''}) is narrower than any at room temperature, as a cooled stone shows it: state the stone’s temperature.` }] : [];
}

/** A strong line where a centre lies, too wide to be it as the run is described: a temperature or resolution wrongly stated, or remembered from another run. */
function widthWarnings(matches: readonly Match[], temperatureK: number): AnalysisWarning[] {
  return matches.flatMap((match) => (match.tooWideFor === undefined ? [] : [{
    code: 'wide-for-temperature',
    message: `The line at ${match.line.position.toFixed(2)} nm lies where ${match.tooWideFor.name} does but is ${match.line.fwhm.toFixed(1)} nm wide, wider than it would be at ${temperatureK.toFixed(0)} K with this resolution: it was not named. Check the stated temperature and resolution.`,
  }]));
}

/** Reads a photoluminescence or Raman curve: the diamond line, imitations, optical centres in emission. */
export function analyseEmission(prepared: PreparedSpectrum, detection: Detection, parameters: AnalysisParameters): Reading {
  const { laserNm, temperatureK, calibrationErrorNm } = parameters;
  const scale = emissionScale(prepared, detection, parameters);
  const warnings: AnalysisWarning[] = [];
  if (!scale.canShift) warnings.push({ code: 'laser-missing', message: 'Without the laser wavelength the diamond line can’t be looked for: enter it in the run’s settings.' });
  const context: MatchContext = { mode: 'emission', temperatureK, resolutionNm: scale.resolutionNm, stepNm: scale.stepNm, calibrationErrorNm };
  let raman = lookForRaman(prepared, detection, parameters, scale, context);
  const residual = alarmingResidual(raman);
  if (residual !== null) warnings.push(residualWarning(residual));
  const named = nameLines(detection, scale, raman, parameters, { ...context, calibrationErrorNm: Math.max(calibrationErrorNm, Math.abs(residual ?? 0)) });
  const rivals = rivalsOfRaman(scale, named);
  if (raman && rivals.length > 0) raman = { ...raman, result: { ...raman.result, present: false, state: 'masked' }, reason: `the instrument can’t part it from ${rivals.join(', ')}` };
  if (raman?.result.state === 'absent' && named.matches.some((match) => match.ambiguousWith.includes(RAMAN_LINE))) {
    raman = { ...raman, result: { ...raman.result, state: 'masked' }, reason: 'a line there may be it or a centre' };
  }
  const simulant = lookForSimulant(prepared, detection, scale, raman);
  const peaks = toPeaks(detection, scale, named, raman, rivals, simulant);
  const ofSimulants = new Set((simulant?.found ?? []).map((found) => scale.inNm[found.line]!));
  const own = named.matches.filter((match) => !ofSimulants.has(match.line));
  const doubt = scale.canName && laserNm !== undefined ? checkLaser(raman, scale.inNm, own, laserNm, scale.unit) : null;
  if (doubt && simulant === null) {
    warnings.push(doubt.warning);
    if (raman?.result.state === 'absent') raman = { ...raman, result: { ...raman.result, state: 'masked' }, reason: 'the laser wavelength is in doubt' };
  }
  if (parameters.resolution === undefined) warnings.push(...wideRaman(raman, scale, named.ramanAt));
  warnings.push(...artefactWarnings(own));
  warnings.push(...temperatureWarnings(own));
  warnings.push(...widthWarnings(own, temperatureK));
  return { peaks, named: own, diamondRaman: raman, simulant, warnings };
}

import { SECOND_ORDER_RAMAN_CM1 } from '../reference/reference-lines.ts';
import type { AnalysisParameters, AnalysisWarning, PeakResult } from './analysis.ts';
import { artefactWarnings } from './artefact-warnings.ts';
import { airFromRamanShift, ramanShiftFromAir } from './convert-axis.ts';
import type { DetectedLine, Detection } from './detect-lines.ts';
import { findDiamondRaman } from './diamond-raman.ts';
import type { FindingInput } from './finding-input.ts';
import { identifySimulant } from './identify-simulant.ts';
import { checkLaser } from './check-laser.ts';
import { doubtRamanOfOthers } from './doubt-raman-of-others.ts';
import type { Match } from './match-centres.ts';
import { matchCentres, RAMAN_LINE } from './match-centres.ts';
import type { PreparedSpectrum } from './prepare-spectrum.ts';

export { RAMAN_LINE as RAMAN_ID } from './match-centres.ts';
/** Above this residual of the diamond line, nm, positions are trusted less and the user is told (judgement). */
const CALIBRATION_ALARM_NM = 0.3;

/** Width at a Raman shift, cm-1, as width in nm at that wavelength. */
const nmWidth = (widthCm1: number, nm: number): number => widthCm1 * nm * nm * 1e-7;

/** The same lines on the wavelength axis. */
function linesInNm(lines: readonly DetectedLine[], unit: PreparedSpectrum['unit'], laserNm: number): DetectedLine[] {
  if (unit === 'nm') return [...lines];
  return lines.map((line) => {
    const position = airFromRamanShift(laserNm, line.position);
    return { ...line, position, fwhm: nmWidth(line.fwhm, position), standardError: line.standardError === null ? null : nmWidth(line.standardError, position) };
  });
}

/** Whether a line lies in the second-order Raman band of diamond; only counts where the first-order line is there. */
function inSecondOrder(nm: number, laserNm: number): boolean {
  const shift = ramanShiftFromAir(laserNm, nm);
  return shift >= SECOND_ORDER_RAMAN_CM1.from && shift <= SECOND_ORDER_RAMAN_CM1.cutOff + 40;
}

/** Centres common enough to be mistaken for the diamond line where the instrument can't part them. */
const RAMAN_RIVALS: readonly string[] = ['NV0', 'N3', 'H3', 'SIV'];

/** Rivals that the line alone would have been taken for. */
function rivalsOf(match: Match | undefined): string[] {
  if (match === undefined) return [];
  return [...(match.centre ? [match.centre.id] : []), ...match.ambiguousWith].filter((id) => RAMAN_RIVALS.includes(id));
}

function peakOf(line: DetectedLine, unit: PreparedSpectrum['unit'], centre: string | null, offset: number | null, ambiguousWith: readonly string[], sidebandOf: string | null): PeakResult {
  return {
    position: line.position, unit, height: line.height, fwhm: line.fwhm, prominence: line.prominence, snr: line.snr, standardError: line.standardError,
    centre, offset, ambiguousWith: [...ambiguousWith], sidebandOf,
  };
}

/** Second-order band of diamond: about this share of the first-order line's area, spread over 400 cm-1 (judgement). */
const SECOND_ORDER_AREA = 0.25;
const SECOND_ORDER_WIDTH_CM1 = 400;
/** Usual height of a sideband against its zero-phonon line at room temperature (judgement). */
const SIDEBAND_SHARE = 0.3;

/** Whether the second-order Raman band explains a bump better than the centre that would own it as a sideband. */
function ramanOwns(id: string, matches: readonly Match[], raman: DetectedLine | null, widthCm1: number): boolean {
  if (raman === null) return false;
  const expected = (SECOND_ORDER_AREA * raman.height * widthCm1) / SECOND_ORDER_WIDTH_CM1;
  return matches.every((match) => match.centre?.id !== id || SIDEBAND_SHARE * match.line.height < expected);
}

type Reading = Pick<FindingInput, 'peaks' | 'named' | 'diamondRaman' | 'simulant' | 'warnings'>;

/** Reads a photoluminescence or Raman curve: the diamond line, imitations, optical centres in emission. */
export function analyseEmission(prepared: PreparedSpectrum, detection: Detection, parameters: AnalysisParameters): Reading {
  const unit = prepared.unit === 'raman-shift' ? 'raman-shift' : 'nm';
  const { laserNm, temperatureK } = parameters;
  const warnings: AnalysisWarning[] = [];
  if (laserNm === undefined && unit === 'nm') warnings.push({ code: 'laser-missing', message: 'Without the laser wavelength the diamond line can’t be looked for: enter it in the run’s settings.' });
  let raman = findDiamondRaman({ x: prepared.x, unit, detection, laserNm, temperatureK, calibrationErrorNm: parameters.calibrationErrorNm });
  let calibrationErrorNm = parameters.calibrationErrorNm;
  if (typeof raman?.result.foundNm === 'number') {
    const residual = raman.result.foundNm - raman.result.expectedNm;
    if (Math.abs(residual) > CALIBRATION_ALARM_NM) {
      calibrationErrorNm = Math.max(calibrationErrorNm, Math.abs(residual));
      warnings.push({ code: 'calibration-residual', message: `The diamond line lies ${residual > 0 ? '+' : '−'}${Math.abs(residual).toFixed(2)} nm from where the laser puts it: check the wavelength scale and the laser wavelength; positions were trusted less.` });
    }
  }
  const canShift = unit === 'raman-shift' || laserNm !== undefined;
  const canName = unit === 'nm' || laserNm !== undefined;
  const laser = laserNm ?? 532;
  const inNm = linesInNm(detection.lines, unit, laser);
  const middleNm = unit === 'nm' ? 0 : airFromRamanShift(laser, 0.5 * (prepared.x[0]! + prepared.x[prepared.x.length - 1]!));
  const resolutionNm = detection.resolution === null ? null : unit === 'nm' ? detection.resolution : nmWidth(detection.resolution, middleNm);
  const context = { mode: 'emission' as const, temperatureK, resolutionNm, calibrationErrorNm };
  // The diamond line is taken out first: it is no optical centre, however near one may lie.
  const ramanAt = raman?.line ? detection.lines.indexOf(raman.line) : -1;
  const missing = raman && !raman.line ? { missingRamanNm: raman.result.expectedNm } : {};
  const named = canName ? matchCentres(inNm.filter((_, k) => k !== ramanAt), { ...context, ...missing }) : [];
  const matches = raman?.line || laserNm === undefined ? named : doubtRamanOfOthers(named, laserNm);
  const byLine = new Map(matches.map((match) => [match.line, match]));
  let ramanRivals: string[] = [];
  if (raman?.line && canName) {
    ramanRivals = rivalsOf(matchCentres([inNm[ramanAt]!], context)[0]);
    if (ramanRivals.length > 0 && matches.every((match) => match.centre === null || !ramanRivals.includes(match.centre.id))) {
      raman = { ...raman, result: { ...raman.result, present: false, state: 'masked' }, reason: `the instrument can't part it from ${ramanRivals.join(', ')}` };
    } else ramanRivals = [];
  }
  const covered: [number, number] = [prepared.x[0]!, prepared.x[prepared.x.length - 1]!];
  const toShift = (position: number): number => (unit === 'nm' ? ramanShiftFromAir(laser, position) : position);
  const simulant = canShift && raman?.result.state !== 'present'
    ? identifySimulant(detection.lines.map((line, k) => ({ line: k, shiftCm1: toShift(line.position), height: line.height, snr: line.snr })), [toShift(covered[0]), toShift(covered[1])]) : null;
  const ramanWidthCm1 = raman?.line ? (unit === 'nm' ? raman.line.fwhm / (raman.line.position ** 2 * 1e-7) : raman.line.fwhm) : 0;
  const peaks = detection.lines.map((line, k) => {
    if (k === ramanAt && raman?.line) {
      if (ramanRivals.length > 0) return peakOf(line, unit, null, null, [RAMAN_LINE, ...ramanRivals], null);
      const offset = unit === 'nm' ? line.position - raman.result.expectedNm : line.position - ramanShiftFromAir(laser, raman.result.expectedNm);
      return peakOf(line, unit, RAMAN_LINE, offset, [], null);
    }
    const ofSimulant = simulant?.found.find((f) => f.line === k);
    if (simulant && ofSimulant) return peakOf(line, unit, simulant.simulant.id, line.position - (unit === 'nm' ? airFromRamanShift(laser, ofSimulant.referenceCm1) : ofSimulant.referenceCm1), [], null);
    const match = byLine.get(inNm[k]!);
    const hump = canShift && raman?.result.present === true && (match === undefined || match.centre === null) && inSecondOrder(inNm[k]!.position, laser) && inNm[k]!.fwhm > 2;
    if (!match) return peakOf(line, unit, null, null, [], hump ? RAMAN_LINE : null);
    const expected = match.expectedNm === null ? null : unit === 'nm' ? match.expectedNm : ramanShiftFromAir(laser, match.expectedNm);
    return peakOf(line, unit, match.centre?.id ?? null, expected === null ? null : line.position - expected, match.ambiguousWith, hump && (match.sidebandOf === null || ramanOwns(match.sidebandOf, matches, raman?.line ?? null, ramanWidthCm1)) ? RAMAN_LINE : match.sidebandOf);
  });
  const doubt = canName && laserNm !== undefined ? checkLaser(raman, inNm, matches, laserNm) : null;
  if (doubt) {
    warnings.push(doubt.warning);
    if (doubt.maskAbsence && raman?.result.state === 'absent') raman = { ...raman, result: { ...raman.result, state: 'masked' }, reason: 'the laser wavelength is in doubt' };
  }
  const ofSimulants = new Set((simulant?.found ?? []).map((f) => inNm[f.line]!));
  const own = matches.filter((match) => !ofSimulants.has(match.line));
  warnings.push(...artefactWarnings(own));
  if (temperatureK > 200 && canName && raman?.line) {
    const cold = matchCentres(inNm, { ...context, temperatureK: 77 }).filter((match, k) => typeof match.centre?.roomFwhmNm === 'number' && byLine.get(inNm[k]!)?.centre === null);
    if (cold.length > 0) warnings.push({ code: 'narrow-for-temperature', message: `The line at ${cold[0]!.line.position.toFixed(2)} nm is narrower than any at room temperature: if the stone was cooled, state its temperature.` });
  }
  return { peaks, named: own, diamondRaman: raman, simulant, warnings };
}

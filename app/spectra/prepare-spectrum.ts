import type { Result } from '../result.ts';
import { err, ok } from '../result.ts';
import type { AnalysableMethod, AnalysisParameters, AnalysisWarning } from './analysis.ts';
import type { AnalysisError } from './analysis-error.ts';
import { convertPosition } from './convert-axis.ts';
import type { Ordinate } from './prepare-ordinate.ts';
import { prepareOrdinate } from './prepare-ordinate.ts';
import { UNIT_NAMES, type Spectrum, type StatableXUnit, type XUnit } from './spectrum.ts';

export type AnalysisUnit = 'nm' | 'cm-1' | 'raman-shift';

/** A curve fit for analysis: x strictly ascending in `unit`, y finite, both at least MINIMUM_POINTS long. */
export type PreparedSpectrum = {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly unit: AnalysisUnit;
  readonly ordinate: Ordinate;
  readonly warnings: readonly AnalysisWarning[];
};

export const MINIMUM_POINTS = 20;
/** Share of points that may be missing, and out of order, before the file itself is in doubt (judgement). */
const TOLERATED_SHARE = 0.02;
const TOLERATED_DISORDER = 0.005;

const UNIT_OF: Readonly<Record<AnalysableMethod, AnalysisUnit>> = {
  photoluminescence: 'nm', raman: 'raman-shift', absorption: 'nm', infrared: 'cm-1', 'ultraviolet-transmission': 'nm',
};
/** Where a curve of each method can lie, in its analysis unit: outside, the axis is in another unit than stated. */
const PLAUSIBLE: Readonly<Record<AnalysableMethod, readonly [number, number]>> = {
  photoluminescence: [180, 2600], raman: [-2000, 12000], absorption: [150, 3500], infrared: [100, 15000], 'ultraviolet-transmission': [150, 2600],
};
const ANALYSED_IN: Readonly<Record<AnalysisUnit, string>> = { nm: 'nm', 'cm-1': 'cm⁻¹', 'raman-shift': 'cm⁻¹ of shift' };
const METHOD_WORDS: Readonly<Record<AnalysableMethod, string>> = {
  photoluminescence: 'a photoluminescence', raman: 'a Raman', absorption: 'an absorption', infrared: 'an infrared', 'ultraviolet-transmission': 'an ultraviolet transmission',
};

type Points = { x: Float64Array; y: Float64Array };

function dropNotFinite(spectrum: Spectrum, warnings: AnalysisWarning[]): Result<Points, AnalysisError> {
  const n = spectrum.x.length;
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  let kept = 0;
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(spectrum.x[i]!) || !Number.isFinite(spectrum.y[i]!)) continue;
    x[kept] = spectrum.x[i]!;
    y[kept++] = spectrum.y[i]!;
  }
  const lost = n - kept;
  if (lost > TOLERATED_SHARE * n) return err({ code: 'not-finite', message: `${lost} of ${n} points are not numbers: export the spectrum again from the instrument.` });
  if (lost > 0) warnings.push({ code: 'points-not-finite', message: `${lost} of ${n} points are not numbers and were left out.` });
  return ok({ x: x.slice(0, kept), y: y.slice(0, kept) });
}

/** The unit the file's axis is read in; a Raman file may call its shift cm-1. */
function unitFor(method: AnalysableMethod, unit: XUnit, warnings: AnalysisWarning[]): Result<StatableXUnit, AnalysisError> {
  if (unit === 'pixel' || unit === 'other' || unit === 'unstated') {
    const said = UNIT_NAMES[unit];
    return err({ code: 'axis-unit-missing', message: `The axis has ${said}: state whether it is nm in air or in vacuum, ångström, cm⁻¹, eV or Raman shift.` });
  }
  if (method === 'raman' && unit === 'cm-1') {
    warnings.push({ code: 'axis-read-as-shift', message: 'The axis in cm⁻¹ was read as Raman shift.' });
    return ok('raman-shift');
  }
  if (unit === 'raman-shift' && method !== 'raman' && method !== 'photoluminescence') {
    return err({ code: 'axis-wrong-for-method', message: `A Raman-shift axis does not belong to ${METHOD_WORDS[method]} spectrum: choose the right method or state the axis unit.` });
  }
  return ok(unit);
}

function sortAscending(points: Points, warnings: AnalysisWarning[]): Result<Points, AnalysisError> {
  const { x, y } = points;
  const n = x.length;
  let rises = 0;
  let falls = 0;
  let equal = 0;
  for (let i = 1; i < n; i++) {
    if (x[i]! > x[i - 1]!) rises++;
    else if (x[i]! < x[i - 1]!) falls++;
    else equal++;
  }
  const odd = Math.min(rises, falls);
  if (odd > TOLERATED_DISORDER * n || rises + falls < n / 2) {
    return err({ code: 'axis-not-monotonic', message: `The axis runs back and forth (${rises} steps up, ${falls} down, ${equal} without change): this is not one spectrum. Check the columns of the file.` });
  }
  if (odd === 0 && equal === 0) return ok(falls > rises ? { x: x.slice().reverse(), y: y.slice().reverse() } : points);
  if (odd > 0) warnings.push({ code: 'axis-reordered', message: `${odd} points were out of order and were sorted.` });
  if (equal > 0) warnings.push({ code: 'axis-duplicates', message: `${equal} points repeat a position; their values were averaged.` });
  const order = Uint32Array.from({ length: n }, (_, i) => i).sort((a, b) => x[a]! - x[b]!);
  const sx = new Float64Array(n);
  const sy = new Float64Array(n);
  let kept = 0;
  for (let k = 0; k < n; ) {
    const at = x[order[k]!]!;
    let sum = 0;
    let count = 0;
    for (; k < n && x[order[k]!]! === at; k++, count++) sum += y[order[k]!]!;
    sx[kept] = at;
    sy[kept++] = sum / count;
  }
  return ok({ x: sx.slice(0, kept), y: sy.slice(0, kept) });
}

function implausible(method: AnalysableMethod, unit: StatableXUnit, x: Float64Array): AnalysisError | null {
  const [lo, hi] = PLAUSIBLE[method];
  const first = x[0]!;
  const last = x[x.length - 1]!;
  if (first >= lo && last <= hi) return null;
  const angstrom = unit === 'nm' && first >= 1800 && last <= 26000 && last > 2600;
  const hint = angstrom ? 'It looks like ångström: state that unit.' : 'State the unit of the axis and the method, then analyse again.';
  return { code: 'axis-implausible', message: `Read as ${UNIT_NAMES[unit]}, the axis runs from ${first.toPrecision(5)} to ${last.toPrecision(5)} ${ANALYSED_IN[UNIT_OF[method]]}, where ${METHOD_WORDS[method]} spectrum can’t lie. ${hint}` };
}

function toUnit(points: Points, from: StatableXUnit, method: AnalysableMethod, laserNm: number | undefined): Result<Points, AnalysisError> {
  const to = UNIT_OF[method];
  if (from === to) return ok(points);
  if (laserNm === undefined && (from === 'raman-shift' || to === 'raman-shift')) {
    return err({ code: 'laser-missing', message: 'The laser wavelength is needed to read this axis: enter it in the run’s settings.' });
  }
  const x = new Float64Array(points.x.length);
  for (let i = 0; i < x.length; i++) {
    x[i] = convertPosition(points.x[i]!, from, to, laserNm === undefined ? {} : { laserNm });
    if (!Number.isFinite(x[i]!) || (to !== 'raman-shift' && x[i]! <= 0)) {
      return err({ code: 'axis-implausible', message: `The position ${points.x[i]} can’t be read as ${UNIT_NAMES[from]}: state the unit of the axis and check the laser wavelength.` });
    }
  }
  return ok({ x, y: points.y });
}

/**
 * Checks a spectrum once and brings it into the form the analysis needs: nm in air (cm-1 for infrared, Raman shift for Raman), ascending,
 * and counts, absorbance or transmittance as the method asks. The input is not changed.
 */
export function prepareSpectrum(spectrum: Spectrum, parameters: AnalysisParameters): Result<PreparedSpectrum, AnalysisError> {
  const { method, laserNm } = parameters;
  if (spectrum.x.length !== spectrum.y.length) return err({ code: 'length-mismatch', message: `${spectrum.x.length} positions but ${spectrum.y.length} values: the file is damaged.` });
  const warnings: AnalysisWarning[] = [];
  if (spectrum.x.length < MINIMUM_POINTS) return err({ code: 'too-few-points', message: `${spectrum.x.length} points are too few to analyse; at least ${MINIMUM_POINTS} are needed.` });
  const finite = dropNotFinite(spectrum, warnings);
  if (!finite.ok) return finite;
  const unit = unitFor(method, spectrum.xUnit, warnings);
  if (!unit.ok) return unit;
  const converted = toUnit(finite.value, unit.value, method, laserNm);
  if (!converted.ok) return converted;
  const sorted = sortAscending(converted.value, warnings);
  if (!sorted.ok) return sorted;
  if (sorted.value.x.length < MINIMUM_POINTS) return err({ code: 'too-few-points', message: `${sorted.value.x.length} different positions are too few to analyse; at least ${MINIMUM_POINTS} are needed.` });
  const wrong = implausible(method, unit.value, sorted.value.x);
  if (wrong) return err(wrong);
  const y = sorted.value.y;
  if (y.every((value) => value === y[0])) return err({ code: 'constant', message: 'All values are the same: the instrument recorded nothing, or the wrong column was read.' });
  const ordinate = prepareOrdinate(sorted.value.x, y, spectrum.yUnit, method);
  if (!ordinate.ok) return ordinate;
  return ok({ x: sorted.value.x, y: ordinate.value.y, unit: UNIT_OF[method], ordinate: ordinate.value.ordinate, warnings: [...warnings, ...ordinate.value.warnings] });
}

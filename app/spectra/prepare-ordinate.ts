import type { Result } from '../result.ts';
import { err, ok } from '../result.ts';
import type { AnalysableMethod, AnalysisWarning } from './analysis.ts';
import type { AnalysisError } from './analysis-error.ts';
import type { YUnit } from './spectrum.ts';

/** What the values mean to the analysis; absorption coefficients (cm-1, base e) pass as they are. */
export type Ordinate = 'intensity' | 'absorbance' | 'absorption-coefficient' | 'transmittance';
export type PreparedOrdinate = { readonly y: Float64Array; readonly ordinate: Ordinate; readonly warnings: readonly AnalysisWarning[] };

/** Transmittance below this counts as opaque: absorbance 5 is beyond any detector here. */
const LEAST_TRANSMITTANCE = 1e-5;

function mean(x: Float64Array, y: Float64Array, from: number, to: number): number {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < x.length; i++) if (x[i]! >= from && x[i]! <= to) { sum += y[i]!; count++; }
  return count > 0 ? sum / count : Number.NaN;
}

function absorbanceFromTransmittance(y: Float64Array, full: number, warnings: AnalysisWarning[]): Float64Array {
  let opaque = 0;
  const out = y.map((value) => {
    const t = value / full;
    if (t < LEAST_TRANSMITTANCE) opaque++;
    return -Math.log10(Math.max(LEAST_TRANSMITTANCE, t));
  });
  if (opaque > 0) warnings.push({ code: 'opaque', message: `${opaque} points let no light through; their absorbance is only a lower limit.` });
  return out;
}

/** Infrared without a unit: the lattice's own absorption near 2000 cm-1 stands up in absorbance and down in transmittance. */
function guessInfrared(x: Float64Array, y: Float64Array): YUnit {
  const lattice = mean(x, y, 1950, 2200);
  const beside = mean(x, y, 2690, 2760);
  if (!Number.isFinite(lattice) || !Number.isFinite(beside) || lattice >= beside) return 'absorbance';
  let largest = -Infinity;
  for (const value of y) largest = Math.max(largest, value);
  return largest > 2 ? 'percent-transmittance' : 'transmittance';
}

const NOT_EMITTED: readonly YUnit[] = ['absorbance', 'transmittance', 'percent-transmittance', 'absorption-coefficient', 'reflectance', 'percent-reflectance'];

/** Transmission without a unit: more than 1.5 means per cent or counts, which differ by a factor only. */
const isRelative = (unit: YUnit): boolean => unit === 'counts' || unit === 'arbitrary' || unit === 'unstated' || unit === 'other';

/**
 * Brings values into what the method needs. x ascending, same length as y.
 * Errors: an ordinate that can't be what the method records.
 */
export function prepareOrdinate(x: Float64Array, y: Float64Array, unit: YUnit, method: AnalysableMethod): Result<PreparedOrdinate, AnalysisError> {
  const warnings: AnalysisWarning[] = [];
  if (method === 'photoluminescence' || method === 'raman') {
    if (NOT_EMITTED.includes(unit)) {
      return err({ code: 'ordinate-wrong-for-method', message: 'The file holds absorption, transmission or reflection, not emitted light: choose absorption or infrared as the method.' });
    }
    return ok({ y, ordinate: 'intensity', warnings });
  }
  if (method === 'ultraviolet-transmission') {
    if (unit === 'reflectance' || unit === 'percent-reflectance' || unit === 'absorption-coefficient') {
      return err({ code: 'ordinate-wrong-for-method', message: 'Ultraviolet transmission needs transmittance or absorbance: export the spectrum in one of them.' });
    }
    if (unit === 'absorbance') return ok({ y: y.map((a) => 10 ** -a), ordinate: 'transmittance', warnings });
    if (isRelative(unit)) warnings.push({ code: 'no-reference', message: 'The values are not stated as transmittance; the ratio holds only if the lamp’s own spectrum was divided out.' });
    return ok({ y: unit === 'percent-transmittance' ? y.map((t) => t / 100) : y, ordinate: 'transmittance', warnings });
  }
  let stated = unit;
  if (unit === 'reflectance' || unit === 'percent-reflectance') {
    warnings.push({ code: 'reflectance', message: 'Reflectance was read as if it were transmittance: positions hold, quantities do not.' });
    stated = unit === 'reflectance' ? 'transmittance' : 'percent-transmittance';
  } else if (unit === 'counts') {
    return err({ code: 'ordinate-wrong-for-method', message: 'The file holds counts without a reference: export absorbance or transmittance.' });
  } else if (isRelative(unit)) {
    stated = method === 'infrared' ? guessInfrared(x, y) : 'absorbance';
    warnings.push({ code: 'ordinate-assumed', message: `The file does not say what its values are; they were read as ${stated === 'absorbance' ? 'absorbance' : 'transmittance'}.` });
  }
  switch (stated) {
    case 'transmittance': return ok({ y: absorbanceFromTransmittance(y, 1, warnings), ordinate: 'absorbance', warnings });
    case 'percent-transmittance': return ok({ y: absorbanceFromTransmittance(y, 100, warnings), ordinate: 'absorbance', warnings });
    case 'absorption-coefficient': return ok({ y, ordinate: 'absorption-coefficient', warnings });
    default: return ok({ y, ordinate: 'absorbance', warnings });
  }
}

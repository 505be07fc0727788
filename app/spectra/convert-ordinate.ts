import { err, ok, type Result } from '../result.ts';
import type { YUnit } from './spectrum.ts';

export type OrdinateError = { readonly code: 'no-conversion' | 'path-missing'; readonly message: string };

/** Ordinates that say what share of light passed (or came back), from which each other follows. */
const PASSED: readonly YUnit[] = ['transmittance', 'percent-transmittance', 'absorbance', 'absorption-coefficient'];
const RETURNED: readonly YUnit[] = ['reflectance', 'percent-reflectance'];
const PERCENT = 100;

/** Decadic absorbance of a value; the absorption coefficient is per centimetre, base e, of the light path in cm. */
function toAbsorbance(value: number, from: YUnit, pathCm: number): number {
  switch (from) {
    case 'transmittance': return -Math.log10(value);
    case 'percent-transmittance': return -Math.log10(value / PERCENT);
    case 'absorption-coefficient': return (value * pathCm) / Math.LN10;
    default: return value;
  }
}

function fromAbsorbance(absorbance: number, to: YUnit, pathCm: number): number {
  switch (to) {
    case 'transmittance': return 10 ** -absorbance;
    case 'percent-transmittance': return PERCENT * 10 ** -absorbance;
    case 'absorption-coefficient': return (absorbance * Math.LN10) / pathCm;
    default: return absorbance;
  }
}

/**
 * Ordinates from one unit to another: A = −log₁₀T, α = A·ln10/d (1/cm, base e). Opaque points become infinite, and negative
 * transmittance NaN: what to make of them is the caller's decision. Counts and arbitrary values are comparable to nothing.
 * @param pathCm light path in cm, needed to or from the absorption coefficient
 * Errors: 'path-missing', 'no-conversion'.
 */
export function convertOrdinates(y: Float64Array, from: YUnit, to: YUnit, pathCm?: number): Result<Float64Array, OrdinateError> {
  if (from === to) return ok(y);
  if (RETURNED.includes(from) && RETURNED.includes(to)) return ok(y.map((value) => (to === 'reflectance' ? value / PERCENT : value * PERCENT)));
  if (!PASSED.includes(from) || !PASSED.includes(to)) return err({ code: 'no-conversion', message: `Values in ${from} can’t be turned into ${to}: export them from the instrument in that unit.` });
  // Fractions and per cent differ by a factor alone; through the logarithm they would lose digits.
  if (from === 'transmittance' && to === 'percent-transmittance') return ok(y.map((value) => value * PERCENT));
  if (from === 'percent-transmittance' && to === 'transmittance') return ok(y.map((value) => value / PERCENT));
  if ((from === 'absorption-coefficient' || to === 'absorption-coefficient') && !(pathCm !== undefined && pathCm > 0)) {
    return err({ code: 'path-missing', message: 'The light path in the stone is needed for an absorption coefficient: measure it and enter it.' });
  }
  const path = pathCm ?? Number.NaN;
  return ok(y.map((value) => fromAbsorbance(toAbsorbance(value, from, path), to, path)));
}

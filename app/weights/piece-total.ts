import { formatCarat } from '../domain/weight.ts';
import { formatEstimate } from './estimate-text.ts';
import type { WeightEstimate } from './estimate-weight.ts';

/** All in steps of 0.0001 ct; the uncertainty is expanded (k = 2). */
export type PieceTotal = { readonly estimated: number; readonly uncertainty: number; readonly stones: number; readonly withoutEstimate: number; readonly agrees: boolean | null; readonly sentence: string };

/** k = 2: about 95 per cent where errors are normal. */
const COVERAGE = 2;

/**
 * Adds up the stones of a piece. What the factor of a cut is off by, all its stones share, so those parts add; each stone's own reading adds in squares.
 * Compared with what was declared: it agrees where the difference is within the expanded uncertainty.
 */
export function pieceTotal(estimates: readonly WeightEstimate[], withoutEstimate: number, declared: number | null): PieceTotal {
  const estimated = estimates.reduce((sum, one) => sum + one.weight, 0);
  const shared = estimates.reduce((sum, one) => sum + one.formula, 0);
  const own = Math.hypot(...estimates.map((one) => one.reading));
  const uncertainty = Math.round(COVERAGE * Math.hypot(shared, own));
  const base = { estimated, uncertainty, stones: estimates.length, withoutEstimate };
  const together = `${estimates.length === 1 ? 'The estimate of the one stone is' : `The estimates of ${estimates.length} stones add up to`} ${formatEstimate(estimated)} ct ± ${formatEstimate(uncertainty)} ct (k = 2)`;
  if (estimates.length === 0) return { ...base, agrees: null, sentence: 'No stone of this piece has an estimate yet.' };
  if (withoutEstimate > 0) return { ...base, agrees: null, sentence: `${together}; ${withoutEstimate} ${withoutEstimate === 1 ? 'stone has' : 'stones have'} no estimate, so the total can’t be compared with what was declared.` };
  if (declared === null) return { ...base, agrees: null, sentence: `${together}; no total was declared.` };
  const agrees = Math.abs(estimated - declared) <= uncertainty;
  const difference = `${formatEstimate(Math.abs(estimated - declared))} ct ${estimated > declared ? 'more' : 'less'} than the declared ${formatCarat(declared)} ct`;
  return {
    ...base, agrees,
    sentence: agrees ? `${together}, which agrees with the declared ${formatCarat(declared)} ct within the uncertainty of the estimates.`
      : `${together}: ${difference}, beyond the uncertainty of the estimates. Measure again, and ask where the declared weight comes from.`,
  };
}

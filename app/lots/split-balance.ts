import { compareWeight } from '../custody/compare-weight.ts';
import { formatCarat } from '../domain/weight.ts';
import type { LotPart, SieveClass } from './lot-record.ts';

/** Whether the parts add up to the lot. Weights in 0.0001 ct, `tolerance` too; null where it can't be said. */
export type Balance = {
  readonly count: number; readonly countDifference: number | null;
  readonly weight: number | null; readonly weightDifference: number | null;
  readonly sentences: readonly { readonly text: string; readonly wrong: boolean }[];
};

type Part = Pick<LotPart | SieveClass, 'count' | 'weight'>;

const plural = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

function countSentence(difference: number, count: number, lot: number, what: string): string {
  if (difference === 0) return `The ${what} hold all ${lot} stones.`;
  return `The ${what} hold ${count} stones and the lot ${lot}: ${plural(Math.abs(difference), 'stone')} ${difference > 0 ? 'too many' : 'missing'}. Count again.`;
}

function weightSentence(weight: number, lot: number, tolerance: number, what: string): { text: string; wrong: boolean } {
  const { differs } = compareWeight(weight, lot, tolerance);
  const difference = weight - lot;
  if (!differs) {
    const off = difference === 0 ? 'exactly' : `to ${formatCarat(Math.abs(difference))} ct`;
    return { text: `The ${what} weigh ${formatCarat(weight)} ct together, which agrees with the lot’s ${formatCarat(lot)} ct ${off} (tolerance ${formatCarat(tolerance)} ct).`, wrong: false };
  }
  return { text: `The ${what} weigh ${formatCarat(weight)} ct together and the lot ${formatCarat(lot)} ct: ${formatCarat(Math.abs(difference))} ct ${difference > 0 ? 'too much' : 'missing'}, beyond the tolerance of ${formatCarat(tolerance)} ct. Weigh again.`, wrong: true };
}

/**
 * Compares the parts of a lot with the lot: counts exactly, weights within the tolerance (simple acceptance at the limit).
 * `what` names the parts in the sentences; a part that was not counted or weighed leaves that side open.
 */
export function balanceOf(parts: readonly Part[], lot: { readonly count: number | null; readonly weight: number | null }, tolerance: number, what = 'parts'): Balance {
  const counted = parts.every((part) => part.count !== null);
  const weighed = parts.every((part) => part.weight !== null);
  const count = parts.reduce((sum, part) => sum + (part.count ?? 0), 0);
  const weight = weighed ? parts.reduce((sum, part) => sum + (part.weight ?? 0), 0) : null;
  const countDifference = counted && lot.count !== null ? count - lot.count : null;
  const weightDifference = weight !== null && lot.weight !== null ? weight - lot.weight : null;
  const sentences = [];
  if (countDifference !== null) sentences.push({ text: countSentence(countDifference, count, lot.count!, what), wrong: countDifference !== 0 });
  else if (!counted) sentences.push({ text: `Not all ${what} are counted, so their number can’t be compared.`, wrong: false });
  if (weightDifference !== null) sentences.push(weightSentence(weight!, lot.weight!, tolerance, what));
  else sentences.push({ text: weighed ? 'The lot itself was not weighed, so the weights can’t be compared.' : `Not all ${what} are weighed, so their weight can’t be compared.`, wrong: false });
  return { count, countDifference, weight, weightDifference, sentences };
}

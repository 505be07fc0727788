import { atLeast, atMost, isAbove } from './hypergeometric.ts';

/** How many of a lot are of the kind looked for: both ends possible, whole numbers. */
export type LotBounds = { readonly low: number; readonly high: number };
export type Sampled = { readonly lot: number; readonly sample: number; readonly found: number };

/** The smallest whole number in a range for which a rising condition holds; `to` where it holds nowhere before. */
function firstWhere(from: number, to: number, holds: (n: number) => boolean): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = low + Math.floor((high - low) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Largest number in the lot that a sample like this one would not contradict: P(found or fewer) above `tail`. */
export function highest({ lot, sample, found }: Sampled, tail: number): number {
  const limit = lot - sample + found;
  return firstWhere(found, limit, (grown) => grown === limit || !isAbove(atMost(found, { lot, sample, grown: grown + 1 }), tail));
}

/** Smallest number in the lot that a sample like this one would not contradict: P(found or more) above `tail`. */
export function lowest({ lot, sample, found }: Sampled, tail: number): number {
  return firstWhere(found, lot - sample + found, (grown) => isAbove(atLeast(found, { lot, sample, grown }), tail));
}

export type Sides = 'upper' | 'both';

/**
 * Exact limits of the number in a lot from a random sample without putting back: what C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404
 * do for a proportion, by the hypergeometric distribution; J. P. Buonaccorsi, The American Statistician 41 (1987) 215 (from memory).
 * 'upper': one-sided, the low end is what was found. 'both': each tail gets half. `confidence` between 0 and 1.
 */
export function lotBounds(sampled: Sampled, confidence: number, sides: Sides): LotBounds {
  const { lot, sample, found } = sampled;
  if (found > sample || sample > lot || found < 0) throw new RangeError(`lotBounds: ${found} of ${sample} of ${lot} can’t be`);
  if (sides === 'upper') return { low: found, high: highest(sampled, 1 - confidence) };
  const tail = (1 - confidence) / 2;
  return { low: lowest(sampled, tail), high: highest(sampled, tail) };
}

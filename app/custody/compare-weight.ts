/** Outcome of comparing a reading with the last one; all in the same integer unit. */
export type WeightComparison = { readonly expectedWeight: number; readonly tolerance: number; readonly differs: boolean };

/**
 * Compares a reading with the last recorded weight of the same item in the same unit.
 * A difference equal to the tolerance still agrees (decision rule: simple acceptance at the limit; common practice, no source).
 * Throws on negative or broken numbers: weights are integers of 0.0001 ct or 0.00001 g everywhere.
 */
export function compareWeight(weight: number, expectedWeight: number, tolerance: number): WeightComparison {
  for (const value of [weight, expectedWeight, tolerance]) {
    if (!Number.isSafeInteger(value) || value < 0) throw new RangeError(`compareWeight: ${value} is not a weight in whole units`);
  }
  return { expectedWeight, tolerance, differs: Math.abs(weight - expectedWeight) > tolerance };
}

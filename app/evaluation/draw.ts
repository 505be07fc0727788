import type { SeededRandom } from '../spectra/simulate/seeded-random.ts';
import type { Weighted } from './evaluated-kind.ts';

export const chance = (r: SeededRandom, p: number): boolean => r.uniform() < p;

/** One of a weighted list. */
export function draw<T>(r: SeededRandom, weighted: Weighted<T>): T {
  let left = r.uniform() * weighted.reduce((sum, [weight]) => sum + weight, 0);
  for (const [weight, value] of weighted) {
    left -= weight;
    if (left < 0) return value;
  }
  return weighted.at(-1)![1];
}

/** Some of a list, in their order. */
export function some<T>(r: SeededRandom, list: readonly T[], count: number): T[] {
  const left = [...list];
  while (left.length > count) left.splice(r.below(left.length), 1);
  return left;
}

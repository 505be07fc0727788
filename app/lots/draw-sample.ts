import { seededRandom } from '../spectra/simulate/seeded-random.ts';

/**
 * Which stones of 1 … lot are to be tested: `size` numbers, each set of them equally likely, ascending. The same three numbers give the same list:
 * R. W. Floyd's draw without repetition (J. Bentley, R. Floyd, Comm. ACM 30 (1987) 754) over xoshiro128**. `seed` is a whole number below 2^32.
 */
export function drawSample(lot: number, size: number, seed: number): number[] {
  const random = seededRandom(seed);
  const drawn = new Set<number>();
  for (let j = lot - size; j < lot; j += 1) {
    const t = random.below(j + 1) + 1;
    drawn.add(drawn.has(t) ? j + 1 : t);
  }
  return [...drawn].sort((a, b) => a - b);
}

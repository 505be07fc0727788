/** A lot of `lot` stones of which `grown` are of the kind looked for, and a sample of `sample` stones drawn without putting back. Whole numbers. */
export type Draw = { readonly lot: number; readonly grown: number; readonly sample: number };

const HALF_LOG_TAU = 0.5 * Math.log(2 * Math.PI);
const EXACT_FACTORIAL = 15;

/** ln n! minus Stirling's main terms, n ≥ 1: C. Loader, “Fast and accurate computation of binomial probabilities” (2000); series NIST DLMF 5.11.1. */
function stirlingError(n: number): number {
  if (n <= EXACT_FACTORIAL) {
    let factorial = 1;
    for (let i = 2; i <= n; i += 1) factorial *= i;
    return Math.log(factorial) - (n + 0.5) * Math.log(n) + n - HALF_LOG_TAU;
  }
  const m = n * n;
  return (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - 1 / 1188 / m) / m) / m) / m) / n;
}

/** x ln(x/mean) + mean − x without cancellation where x is near the mean (Loader). */
function deviance(x: number, mean: number): number {
  if (Math.abs(x - mean) >= 0.1 * (x + mean)) return x * Math.log(x / mean) + mean - x;
  const v = (x - mean) / (x + mean);
  let sum = (x - mean) * v;
  let term = 2 * x * v;
  for (let j = 1; j < 1000; j += 1) {
    term *= v * v;
    const next = sum + term / (2 * j + 1);
    if (next === sum) break;
    sum = next;
  }
  return sum;
}

/** ln of the binomial probability of x of n at p, with q = 1 − p. */
function logBinomial(x: number, n: number, p: number, q: number): number {
  if (x === 0) return n === 0 ? 0 : p < 0.1 ? -deviance(n, n * q) - n * p : n * Math.log(q);
  if (x === n) return q < 0.1 ? -deviance(n, n * p) - n * q : n * Math.log(p);
  const exponent = stirlingError(n) - stirlingError(x) - stirlingError(n - x) - deviance(x, n * p) - deviance(n - x, n * q);
  return exponent + 0.5 * Math.log(n / (2 * Math.PI * x * (n - x)));
}

const fewest = ({ lot, grown, sample }: Draw): number => Math.max(0, sample - (lot - grown));
const most = ({ grown, sample }: Draw): number => Math.min(sample, grown);

function checked({ lot, grown, sample }: Draw): void {
  for (const value of [lot, grown, sample]) {
    if (!Number.isSafeInteger(value) || value < 0 || value > lot) throw new RangeError(`hypergeometric: ${value} is no number of stones of a lot of ${lot}`);
  }
}

/** Probability that exactly `found` are in the sample; relative error below 1e-12 up to a lot of 1,000,000. */
export function probabilityOf(found: number, draw: Draw): number {
  checked(draw);
  const { lot, grown, sample } = draw;
  if (found < fewest(draw) || found > most(draw)) return 0;
  if (sample === 0 || sample === lot) return 1;
  const p = sample / lot;
  const q = (lot - sample) / lot;
  return Math.exp(logBinomial(found, grown, p, q) + logBinomial(sample - found, lot - grown, p, q) - logBinomial(sample, lot, p, q));
}

/** Terms below this share of the sum no longer change it. */
const NEGLIGIBLE = 1e-18;

/** Sum of probabilities from `from` in one direction, each from the one before by their ratio. */
function sumFrom(from: number, direction: 1 | -1, draw: Draw): number {
  const { lot, grown, sample } = draw;
  const last = direction === 1 ? most(draw) : fewest(draw);
  let term = probabilityOf(from, draw);
  let sum = term;
  for (let x = from; x !== last; x += direction) {
    term *= direction === 1
      ? ((grown - x) * (sample - x)) / ((x + 1) * (lot - grown - sample + x + 1))
      : (x * (lot - grown - sample + x)) / ((grown - x + 1) * (sample - x + 1));
    sum += term;
    if (term < sum * NEGLIGIBLE) break;
  }
  return sum;
}

/** Probability of `found` or fewer in the sample. */
export function atMost(found: number, draw: Draw): number {
  checked(draw);
  if (found < fewest(draw)) return 0;
  if (found >= most(draw)) return 1;
  const mean = (draw.sample * draw.grown) / draw.lot;
  return found <= mean ? Math.min(1, sumFrom(found, -1, draw)) : Math.max(0, 1 - sumFrom(found + 1, 1, draw));
}

/** Probability of `found` or more in the sample. */
export function atLeast(found: number, draw: Draw): number {
  checked(draw);
  if (found <= fewest(draw)) return 1;
  if (found > most(draw)) return 0;
  const mean = (draw.sample * draw.grown) / draw.lot;
  return found > mean ? Math.min(1, sumFrom(found, 1, draw)) : Math.max(0, 1 - sumFrom(found - 1, -1, draw));
}

/** A probability that is mathematically equal to a limit may miss it by rounding; it counts as not above. */
export const isAbove = (probability: number, limit: number): boolean => probability > limit * (1 + 1e-10);

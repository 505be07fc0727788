/** Lanczos coefficients for g = 7, n = 9: C. Lanczos, SIAM J. Numer. Anal. B 1 (1964) 86; values as commonly printed. */
const LANCZOS = [0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7] as const;

/** Natural logarithm of the gamma function, x > 0; about 1e-14 relative. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const z = x - 1;
  let sum: number = LANCZOS[0];
  for (let i = 1; i < LANCZOS.length; i++) sum += LANCZOS[i]! / (z + i);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

const TINY = 1e-300;
const STEPS = 100_000;

/** Continued fraction of the incomplete beta function by Lentz's method (NIST DLMF 8.17.22). Converges fast for x below (a+1)/(a+b+2). */
function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < STEPS; m++) {
    for (const term of [(m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)), (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))]) {
      d = 1 / (1 + term * d || TINY);
      c = 1 + term / c || TINY;
      h *= c * d;
    }
    if (Math.abs(c * d - 1) < 1e-16) break;
  }
  return h;
}

/** Regularised incomplete beta function I_x(a, b), 0 ≤ x ≤ 1, a and b > 0. */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * betaFraction(x, a, b)) / a : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

/** The x at which I_x(a, b) = p, by halving: exact to the last digits of a double, and never misled. */
export function betaQuantile(p: number, a: number, b: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  let low = 0;
  let high = 1;
  for (let i = 0; i < 1100; i++) {
    const middle = low + (high - low) / 2;
    if (middle === low || middle === high) break;
    if (incompleteBeta(middle, a, b) < p) low = middle;
    else high = middle;
  }
  return low + (high - low) / 2;
}

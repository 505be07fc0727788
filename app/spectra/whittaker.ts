/** Scratch of one Whittaker solver, reused between calls of the same length. */
export type WhittakerWork = { readonly d: Float64Array; readonly e: Float64Array; readonly f: Float64Array; readonly g: Float64Array };

export const whittakerWork = (n: number): WhittakerWork => ({ d: new Float64Array(n), e: new Float64Array(n), f: new Float64Array(n), g: new Float64Array(n) });

/**
 * Solves (W + lambda·D2ᵀD2) z = W y for z, D2 the second difference: a symmetric pentadiagonal system, by LDLᵀ in linear time.
 * y, w, z have one length n >= 5; w >= 0 with at least two points above zero. z may be y's own array.
 * E. T. Whittaker, Proc. Edinburgh Math. Soc. 41 (1923) 63; P. H. C. Eilers, Anal. Chem. 75 (2003) 3631 (from memory).
 */
export function whittaker(y: Float64Array, w: Float64Array, lambda: number, z: Float64Array, work: WhittakerWork): void {
  const n = y.length;
  const { d, e, f, g } = work;
  let d1 = 0, d2 = 0, e1 = 0, f1 = 0, f2 = 0, g1 = 0, g2 = 0;
  for (let i = 0; i < n; i++) {
    const wi = w[i]!;
    const diagonal = i === 0 || i === n - 1 ? 1 : i === 1 || i === n - 2 ? 5 : 6;
    const first = i === 0 || i === n - 2 ? -2 : -4;
    const di = wi + lambda * diagonal - d1 * e1 * e1 - d2 * f2 * f2;
    const ei = i < n - 1 ? (lambda * first - d1 * e1 * f1) / di : 0;
    const fi = i < n - 2 ? lambda / di : 0;
    const gi = wi * y[i]! - e1 * g1 - f2 * g2;
    d[i] = di; e[i] = ei; f[i] = fi; g[i] = gi;
    d2 = d1; d1 = di; e1 = ei; f2 = f1; f1 = fi; g2 = g1; g1 = gi;
  }
  let z1 = 0, z2 = 0;
  for (let i = n - 1; i >= 0; i--) {
    const zi = g[i]! / d[i]! - e[i]! * z1 - f[i]! * z2;
    z[i] = zi;
    z2 = z1; z1 = zi;
  }
}

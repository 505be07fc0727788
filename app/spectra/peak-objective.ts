import { expNegative } from './exp-negative.ts';
import type { Objective } from './levenberg-marquardt.ts';

export const PEAK_SHAPES = ['gaussian', 'lorentzian', 'pseudo-voigt'] as const;
export type PeakShape = (typeof PEAK_SHAPES)[number];

const LN16 = 4 * Math.LN2;

/** Parameters of a peak: height, position, FWHM and, for pseudo-Voigt only, the Lorentzian share. */
export const parametersPerPeak = (shape: PeakShape): number => (shape === 'pseudo-voigt' ? 4 : 3);

/** One pseudo-Voigt peak on a straight baseline, the commonest fit: sums kept in locals, no inner loops. */
function onePseudoVoigt(x: Float64Array, y: Float64Array, n: number, middle: number): Objective {
  return (p, jtj, jtr) => {
    const h = p[0]!, c = p[1]!, perWidth = 1 / p[2]!, eta = p[3]!, level = p[4]!, tilt = p[5]!;
    const gaussShare = 1 - eta;
    let rss = 0, r0 = 0, r1 = 0, r2 = 0, r3 = 0, r4 = 0, r5 = 0;
    let a00 = 0, a10 = 0, a11 = 0, a20 = 0, a21 = 0, a22 = 0, a30 = 0, a31 = 0, a32 = 0, a33 = 0;
    let a40 = 0, a41 = 0, a42 = 0, a43 = 0, a50 = 0, a51 = 0, a52 = 0, a53 = 0, a54 = 0, a55 = 0;
    for (let i = 0; i < n; i++) {
      const at = x[i]!;
      const t = at - middle;
      const u = (at - c) * perWidth;
      const gauss = expNegative(LN16 * u * u);
      const lorentz = 1 / (1 + 4 * u * u);
      const g0 = gaussShare * gauss + eta * lorentz;
      const g1 = h * perWidth * u * (2 * LN16 * gaussShare * gauss + 8 * eta * lorentz * lorentz);
      const g2 = g1 * u;
      const g3 = h * (lorentz - gauss);
      const r = y[i]! - h * g0 - level - tilt * t;
      rss += r * r;
      r0 += g0 * r; r1 += g1 * r; r2 += g2 * r; r3 += g3 * r; r4 += r; r5 += t * r;
      a00 += g0 * g0;
      a10 += g1 * g0; a11 += g1 * g1;
      a20 += g2 * g0; a21 += g2 * g1; a22 += g2 * g2;
      a30 += g3 * g0; a31 += g3 * g1; a32 += g3 * g2; a33 += g3 * g3;
      a40 += g0; a41 += g1; a42 += g2; a43 += g3;
      a50 += t * g0; a51 += t * g1; a52 += t * g2; a53 += t * g3; a54 += t; a55 += t * t;
    }
    jtr[0] = r0; jtr[1] = r1; jtr[2] = r2; jtr[3] = r3; jtr[4] = r4; jtr[5] = r5;
    jtj[0] = a00;
    jtj[6] = a10; jtj[7] = a11;
    jtj[12] = a20; jtj[13] = a21; jtj[14] = a22;
    jtj[18] = a30; jtj[19] = a31; jtj[20] = a32; jtj[21] = a33;
    jtj[24] = a40; jtj[25] = a41; jtj[26] = a42; jtj[27] = a43; jtj[28] = n;
    jtj[30] = a50; jtj[31] = a51; jtj[32] = a52; jtj[33] = a53; jtj[34] = a54; jtj[35] = a55;
    return rss;
  };
}

function anyPeaks(x: Float64Array, y: Float64Array, n: number, shape: PeakShape, count: number, middle: number): Objective {
  const stride = parametersPerPeak(shape);
  const last = count * stride;
  const m = last + 2;
  const g = new Float64Array(m);
  g[last] = 1;
  return (p, jtj, jtr) => {
    let rss = 0;
    jtj.fill(0);
    jtr.fill(0);
    for (let i = 0; i < n; i++) {
      const at = x[i]!;
      g[last + 1] = at - middle;
      let r = y[i]! - p[last]! - p[last + 1]! * (at - middle);
      for (let k = 0; k < last; k += stride) {
        const h = p[k]!;
        const perWidth = 1 / p[k + 2]!;
        const u = (at - p[k + 1]!) * perWidth;
        const eta = stride === 4 ? p[k + 3]! : shape === 'gaussian' ? 0 : 1;
        const gauss = shape === 'lorentzian' ? 0 : expNegative(LN16 * u * u);
        const lorentz = shape === 'gaussian' ? 0 : 1 / (1 + 4 * u * u);
        const value = (1 - eta) * gauss + eta * lorentz;
        const byPosition = h * perWidth * u * (2 * LN16 * (1 - eta) * gauss + 8 * eta * lorentz * lorentz);
        r -= h * value;
        g[k] = value;
        g[k + 1] = byPosition;
        g[k + 2] = byPosition * u;
        if (stride === 4) g[k + 3] = h * (lorentz - gauss);
      }
      rss += r * r;
      for (let a = 0, row = 0; a < m; a++, row += m) {
        const ga = g[a]!;
        jtr[a] = jtr[a]! + ga * r;
        for (let b = 0; b <= a; b++) jtj[row + b] = jtj[row + b]! + ga * g[b]!;
      }
    }
    return rss;
  };
}

/**
 * Least-squares objective of `count` peaks of one shape on a straight baseline a + b (x - middle), for the first n points of x and y.
 * Parameters: those of each peak in turn (see parametersPerPeak), then a and b.
 */
export function peakObjective(x: Float64Array, y: Float64Array, n: number, shape: PeakShape, count: number, middle: number): Objective {
  return shape === 'pseudo-voigt' && count === 1 ? onePseudoVoigt(x, y, n, middle) : anyPeaks(x, y, n, shape, count, middle);
}

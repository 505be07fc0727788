/**
 * Savitzky–Golay smoothing and differentiation by local polynomials.
 * A. Savitzky, M. J. E. Golay, Anal. Chem. 36 (1964) 1627; errata J. Steinier et al., Anal. Chem. 44 (1972) 1906.
 * Ends: the polynomial of the first or last full window is evaluated at the end points ('interp').
 */
export type SavitzkyGolayOptions = {
  /** Odd number of points, larger than degree. */
  readonly width: number;
  readonly degree: number;
  /** 0 smooths; the result of a derivative is per `step`. */
  readonly derivative?: number;
  /** Spacing of the points. */
  readonly step?: number;
};

/** Discrete orthonormal polynomials on -m..m by the three-term recurrence: stable for any usual width and degree. */
function orthonormalPolynomials(width: number, degree: number): Float64Array[] {
  const m = (width - 1) / 2;
  const rows: Float64Array[] = [];
  let previous = new Float64Array(width);
  let current = new Float64Array(width).fill(1 / Math.sqrt(width));
  rows.push(current);
  for (let k = 1; k <= degree; k++) {
    const next = new Float64Array(width);
    let overlap = 0;
    for (let j = 0; j < width; j++) overlap += (j - m) * current[j]! * previous[j]!;
    for (let j = 0; j < width; j++) next[j] = (j - m) * current[j]! - overlap * previous[j]!;
    let norm = 0;
    for (let j = 0; j < width; j++) norm += next[j]! * next[j]!;
    norm = Math.sqrt(norm);
    for (let j = 0; j < width; j++) next[j] = next[j]! / norm;
    rows.push(next);
    previous = current;
    current = next;
  }
  return rows;
}

/** Values at `position` of the `derivative`-th derivative of the orthonormal polynomials, by differentiating the recurrence. */
function polynomialDerivatives(width: number, degree: number, position: number, derivative: number): Float64Array {
  const m = (width - 1) / 2;
  const rows = orthonormalPolynomials(width, degree);
  // table[d][k]: d-th derivative of polynomial k at the position.
  const table = Array.from({ length: derivative + 1 }, () => new Float64Array(degree + 1));
  table[0]![0] = 1 / Math.sqrt(width);
  for (let k = 1; k <= degree; k++) {
    const current = rows[k - 1]!;
    let overlap = 0;
    if (k > 1) for (let j = 0; j < width; j++) overlap += (j - m) * current[j]! * rows[k - 2]![j]!;
    let norm = 0;
    for (let j = 0; j < width; j++) {
      const value = (j - m) * current[j]! - overlap * (k > 1 ? rows[k - 2]![j]! : 0);
      norm += value * value;
    }
    norm = Math.sqrt(norm);
    for (let d = 0; d <= derivative; d++) {
      const lower = d > 0 ? d * table[d - 1]![k - 1]! : 0;
      table[d]![k] = (position * table[d]![k - 1]! + lower - overlap * (k > 1 ? table[d]![k - 2]! : 0)) / norm;
    }
  }
  return table[derivative]!;
}

/** Convolution weights for the value (or derivative) at `position` points from the window's middle, unit spacing. */
export function savitzkyGolayWeights(width: number, degree: number, derivative = 0, position = 0): Float64Array {
  const rows = orthonormalPolynomials(width, degree);
  const at = polynomialDerivatives(width, degree, position, derivative);
  const weights = new Float64Array(width);
  for (let k = 0; k <= degree; k++) for (let j = 0; j < width; j++) weights[j] = weights[j]! + at[k]! * rows[k]![j]!;
  return weights;
}

type Kernel = { readonly middle: Float64Array; readonly left: readonly Float64Array[]; readonly right: readonly Float64Array[]; readonly gain: number };
const kernels = new Map<string, Kernel>();

function kernel(width: number, degree: number, derivative: number): Kernel {
  const key = `${width},${degree},${derivative}`;
  const known = kernels.get(key);
  if (known) return known;
  const m = (width - 1) / 2;
  const middle = savitzkyGolayWeights(width, degree, derivative);
  const made: Kernel = {
    middle,
    gain: Math.hypot(...middle),
    left: Array.from({ length: m }, (_, i) => savitzkyGolayWeights(width, degree, derivative, i - m)),
    right: Array.from({ length: m }, (_, i) => savitzkyGolayWeights(width, degree, derivative, i + 1)),
  };
  kernels.set(key, made);
  return made;
}

/** Share of white noise that smoothing leaves: root of the weights' sum of squares. */
export const noiseGain = (width: number, degree: number): number => kernel(width, degree, 0).gain;

/** The full windows, one pair of weights at a time over the whole curve: weights are even or odd about the middle, as the derivative is. */
function convolve(y: Float64Array, middle: Float64Array, m: number, parity: 1 | -1, scale: number, out: Float64Array): void {
  const to = y.length - m;
  const centre = middle[m]! * scale;
  for (let i = m; i < to; i++) out[i] = centre * y[i]!;
  for (let j = 1; j <= m; j++) {
    const weight = middle[m + j]! * scale;
    if (parity === 1) for (let i = m; i < to; i++) out[i] = out[i]! + weight * (y[i + j]! + y[i - j]!);
    else for (let i = m; i < to; i++) out[i] = out[i]! + weight * (y[i + j]! - y[i - j]!);
  }
}

/**
 * Smoothed values or derivative of y, same length.
 * Throws where width is even, not larger than degree, or larger than the curve: a fault of the caller.
 */
export function savitzkyGolay(y: Float64Array, options: SavitzkyGolayOptions): Float64Array {
  const { width, degree, derivative = 0, step = 1 } = options;
  const n = y.length;
  if (width % 2 === 0 || width <= degree || width > n) throw new RangeError(`Savitzky–Golay width ${width} does not suit degree ${degree} and ${n} points`);
  const m = (width - 1) / 2;
  const { middle, left, right } = kernel(width, degree, derivative);
  const scale = step ** -derivative;
  const out = new Float64Array(n);
  convolve(y, middle, m, derivative % 2 === 0 ? 1 : -1, scale, out);
  for (let i = 0; i < m; i++) {
    let head = 0;
    let tail = 0;
    for (let j = 0; j < width; j++) {
      head += left[i]![j]! * y[j]!;
      tail += right[i]![j]! * y[n - width + j]!;
    }
    out[i] = head * scale;
    out[n - m + i] = tail * scale;
  }
  return out;
}

/** Complex numbers of a square field, side a power of two, row after row. */
export type ComplexField = { readonly side: number; readonly re: Float64Array; readonly im: Float64Array };

const twiddles = new Map<number, { cos: Float64Array; sin: Float64Array }>();

function twiddlesOf(n: number): { cos: Float64Array; sin: Float64Array } {
  let known = twiddles.get(n);
  if (known === undefined) {
    known = { cos: Float64Array.from({ length: n / 2 }, (_, i) => Math.cos(2 * Math.PI * i / n)), sin: Float64Array.from({ length: n / 2 }, (_, i) => Math.sin(2 * Math.PI * i / n)) };
    twiddles.set(n, known);
  }
  return known;
}

/** Transform of n numbers that lie `step` apart from `start` on, in place (Cooley and Tukey 1965, base two). */
function transformLine(re: Float64Array, im: Float64Array, start: number, step: number, n: number, sign: 1 | -1): void {
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      const [a, b] = [start + step * i, start + step * j];
      const [r, m] = [re[a]!, im[a]!];
      re[a] = re[b]!; im[a] = im[b]!; re[b] = r; im[b] = m;
    }
  }
  const { cos, sin } = twiddlesOf(n);
  for (let length = 2; length <= n; length <<= 1) {
    const half = length >> 1;
    const turn = n / length;
    for (let from = 0; from < n; from += length) {
      for (let k = 0; k < half; k++) {
        const a = start + step * (from + k);
        const b = a + step * half;
        const c = cos[k * turn]!;
        const s = sign * sin[k * turn]!;
        const r = re[b]! * c - im[b]! * s;
        const m = re[b]! * s + im[b]! * c;
        re[b] = re[a]! - r; im[b] = im[a]! - m;
        re[a] = re[a]! + r; im[a] = im[a]! + m;
      }
    }
  }
}

/** Two-dimensional Fourier transform in place; `inverse` is not divided by the number of points. */
export function transformField({ side, re, im }: ComplexField, direction: 'forward' | 'inverse'): void {
  const sign = direction === 'forward' ? -1 : 1;
  for (let row = 0; row < side; row++) transformLine(re, im, row * side, 1, side, sign);
  for (let column = 0; column < side; column++) transformLine(re, im, column, side, side, sign);
}

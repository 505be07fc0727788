/**
 * Monotone cubic interpolation (F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300; end slopes as in PCHIP; from memory).
 * x strictly ascending, same length as y, at least 2. Returns 0 outside the range.
 */
export function pchip(x: ArrayLike<number>, y: ArrayLike<number>): (at: number) => number {
  const n = x.length;
  const h = Array.from({ length: n - 1 }, (_, i) => x[i + 1]! - x[i]!);
  const delta = h.map((width, i) => (y[i + 1]! - y[i]!) / width);
  const slope = new Array<number>(n).fill(0);
  for (let i = 1; i < n - 1; i++) {
    const a = delta[i - 1]!;
    const b = delta[i]!;
    if (a * b <= 0) continue;
    const w1 = 2 * h[i]! + h[i - 1]!;
    const w2 = h[i]! + 2 * h[i - 1]!;
    slope[i] = (w1 + w2) / (w1 / a + w2 / b);
  }
  const end = (h0: number, h1: number, d0: number, d1: number): number => {
    const s = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if (s * d0 <= 0) return 0;
    return d0 * d1 < 0 && Math.abs(s) > 3 * Math.abs(d0) ? 3 * d0 : s;
  };
  slope[0] = n === 2 ? delta[0]! : end(h[0]!, h[1]!, delta[0]!, delta[1]!);
  slope[n - 1] = n === 2 ? delta[0]! : end(h[n - 2]!, h[n - 3]!, delta[n - 2]!, delta[n - 3]!);
  return (at) => {
    if (at < x[0]! || at > x[n - 1]!) return 0;
    let lo = 0;
    let hi = n - 1;
    while (hi - lo > 1) {
      const mid = (lo + hi) >> 1;
      if (x[mid]! <= at) lo = mid;
      else hi = mid;
    }
    const t = (at - x[lo]!) / h[lo]!;
    const t2 = t * t;
    const t3 = t2 * t;
    return (2 * t3 - 3 * t2 + 1) * y[lo]! + (t3 - 2 * t2 + t) * h[lo]! * slope[lo]! + (3 * t2 - 2 * t3) * y[lo + 1]! + (t3 - t2) * h[lo]! * slope[lo + 1]!;
  };
}

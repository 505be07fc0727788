/** k-th smallest (0-based) of the first n values of `a`; reorders them. Hoare's selection, linear on average. */
export function selectKth(a: Float64Array, n: number, k: number): number {
  let lo = 0;
  let hi = n - 1;
  while (lo < hi) {
    const pivot = a[(lo + hi) >> 1]!;
    let i = lo;
    let j = hi;
    while (i <= j) {
      while (a[i]! < pivot) i++;
      while (a[j]! > pivot) j--;
      if (i <= j) {
        const t = a[i]!;
        a[i] = a[j]!;
        a[j] = t;
        i++;
        j--;
      }
    }
    if (k <= j) hi = j;
    else if (k >= i) lo = i;
    else break;
  }
  return a[k]!;
}

/** Median of the first n values of `a`; reorders them. NaN-free input; n >= 1. */
export function medianInPlace(a: Float64Array, n: number = a.length): number {
  const half = n >> 1;
  const upper = selectKth(a, n, half);
  if (n % 2 === 1) return upper;
  let lower = -Infinity;
  for (let i = 0; i < half; i++) if (a[i]! > lower) lower = a[i]!;
  return 0.5 * (lower + upper);
}

/** Median of the values, input untouched. */
export const median = (values: ArrayLike<number>): number => medianInPlace(Float64Array.from(values));

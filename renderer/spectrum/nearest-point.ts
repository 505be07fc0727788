/** Index of the point nearest to `at`; x ascends or descends. -1 for an empty curve. */
export function nearestPoint(x: ArrayLike<number>, at: number): number {
  const last = x.length - 1;
  if (last < 0) return -1;
  const rising = x[last]! >= x[0]!;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((x[middle]! <= at) === rising) low = middle;
    else high = middle;
  }
  return Math.abs(x[high]! - at) < Math.abs(x[low]! - at) ? high : low;
}

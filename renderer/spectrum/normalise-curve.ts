/** A curve scaled so that its lowest point is 0 and its highest 1; a flat curve becomes all zeros. Points that are no number stay so. */
export function normaliseCurve(y: ArrayLike<number>): Float64Array {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < y.length; i++) {
    const value = y[i]!;
    if (!Number.isFinite(value)) continue;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const span = high - low;
  return Float64Array.from(y, (value) => (span > 0 ? (value - low) / span : value - value));
}

/** Longest array kept between calls: a curve of 64k points; longer ones are rare and made afresh. */
const LONGEST_KEPT = 1 << 16;

/**
 * A place for one array of intermediate values that never leaves its function: the same memory serves every curve of one length.
 * What it hands out holds the values of the call before, and is good until the next call.
 */
export function workArray(): (n: number) => Float64Array {
  let kept = new Float64Array(0);
  return (n) => {
    if (kept.length === n) return kept;
    const fresh = new Float64Array(n);
    if (n <= LONGEST_KEPT) kept = fresh;
    return fresh;
  };
}

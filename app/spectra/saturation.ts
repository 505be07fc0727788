export type Saturation = { /** First and last point, inclusive, of each run at the ceiling. */ readonly runs: readonly (readonly [number, number])[]; readonly level: number };
/** Shortest run of identical greatest values that counts as a ceiling. */
const SHORTEST_RUN = 3;

/**
 * Runs of points that share the curve's greatest value, where that value stands well above the noise: the detector's ceiling.
 * y and noise have one length. Null where nothing is cut off.
 */
export function findSaturation(y: Float64Array, noise: Float64Array): Saturation | null {
  const n = y.length;
  let level = -Infinity;
  let least = Infinity;
  for (let i = 0; i < n; i++) {
    if (y[i]! > level) level = y[i]!;
    if (y[i]! < least) least = y[i]!;
  }
  const runs: [number, number][] = [];
  for (let i = 0; i < n; i++) {
    if (y[i] !== level) continue;
    let end = i;
    while (end < n - 1 && y[end + 1] === level) end++;
    if (end - i + 1 >= SHORTEST_RUN && level - least > 20 * noise[i]!) runs.push([i, end]);
    i = end;
  }
  return runs.length > 0 ? { runs, level } : null;
}

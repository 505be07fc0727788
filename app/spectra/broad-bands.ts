import type { BroadBand } from '../reference/broad-bands.ts';
import { BROAD_BANDS } from '../reference/broad-bands.ts';

export type BroadBandMatch = { readonly band: BroadBand; /** Place of the maximum, nm, and height over the chord, in the curve's unit. */ readonly maximumNm: number; readonly height: number };

/** A band must stand this far over its chord: in noise, and in absorbance (judgement; instruments step by 0.01 at detector changes). */
const LEAST_SIGMAS = 10;
const LEAST_ABSORBANCE = 0.03;
/** Above this absorbance stray light bends bands. */
const MOST_ABSORBANCE = 2.5;
/** The maximum must lie this near the published centre, in widths. */
const NEAR_WIDTHS = 0.2;

const valueAt = (x: Float64Array, y: Float64Array, nm: number): number => {
  let lo = 0;
  let hi = x.length - 1;
  while (hi - lo > 1) {
    const mid = (lo + hi) >> 1;
    if (x[mid]! <= nm) lo = mid;
    else hi = mid;
  }
  return y[lo]! + ((y[hi]! - y[lo]!) * (nm - x[lo]!)) / (x[hi]! - x[lo]!);
};

/**
 * Broad absorption bands by their height over the chord one width to either side.
 * x ascending nm; y smoothed absorbance; noise one standard deviation per point.
 */
export function findBroadBands(x: Float64Array, y: Float64Array, noise: Float64Array): BroadBandMatch[] {
  const found: BroadBandMatch[] = [];
  for (const band of BROAD_BANDS) {
    const from = band.nm - band.fwhmNm;
    const to = band.nm + band.fwhmNm;
    if (x[0]! > from || x[x.length - 1]! < to) continue;
    const left = valueAt(x, y, from);
    const slope = (valueAt(x, y, to) - left) / (to - from);
    let best = -Infinity;
    let at = 0;
    for (let i = 0; i < x.length; i++) {
      if (x[i]! < from || x[i]! > to) continue;
      const over = y[i]! - left - slope * (x[i]! - from);
      if (over > best) { best = over; at = i; }
    }
    const near = Math.abs(x[at]! - band.nm) <= NEAR_WIDTHS * band.fwhmNm;
    // Half of the height a quarter of the width away shows a band, not a line.
    const broad = Math.min(valueAt(x, y, x[at]! - band.fwhmNm / 4) - left - slope * (x[at]! - band.fwhmNm / 4 - from), valueAt(x, y, x[at]! + band.fwhmNm / 4) - left - slope * (x[at]! + band.fwhmNm / 4 - from)) > 0.55 * best;
    if (near && broad && best > LEAST_ABSORBANCE && best > LEAST_SIGMAS * noise[at]! && y[at]! < MOST_ABSORBANCE) found.push({ band, maximumNm: x[at]!, height: best });
  }
  // One band has one name: of two that share a maximum, the nearer.
  return found.filter((match) => !found.some((other) => other !== match && Math.abs(other.maximumNm - match.maximumNm) < 0.5 * match.band.fwhmNm
    && Math.abs(other.maximumNm - other.band.nm) < Math.abs(match.maximumNm - match.band.nm)));
}

import type { AnalysisWarning } from './analysis.ts';
import { SHORT_WAVE_NM } from '../reference/reference-lines.ts';

/** Thresholds of the ratio below and above which the reading is plain (judgement). */
export const TRANSPARENCY = { opaqueBelow: 0.02, transparentAbove: 0.2 } as const;
/** Where the stone's transmission is taken as its own reference, nm: clear of edge and cape lines. */
const REFERENCE_RANGES: readonly (readonly [number, number])[] = [[490, 520], [400, 410], [360, 370]];
const SHORT_WAVE_HALF_NM = 2;

export type UltravioletReading = { readonly edgeNm: number | null; readonly ratio: number | null; readonly ratioError: number | null; readonly warnings: readonly AnalysisWarning[] };

function meanBetween(x: Float64Array, y: Float64Array, from: number, to: number): { mean: number; count: number } {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < x.length; i++) if (x[i]! >= from && x[i]! <= to) { sum += y[i]!; count++; }
  return { mean: count > 0 ? sum / count : Number.NaN, count };
}

/**
 * Absorption edge (nm, where the transmission falls to half of the reference, walking towards short waves) and the ratio T(254 nm)/T(reference).
 * x ascending nm, y transmittance (any scale), smoothed; noise one standard deviation. Values are null where the curve does not reach.
 */
export function readUltraviolet(x: Float64Array, y: Float64Array, noise: Float64Array): UltravioletReading {
  const warnings: AnalysisWarning[] = [];
  let reference = Number.NaN;
  let referenceNm = Number.NaN;
  for (const [from, to] of REFERENCE_RANGES) {
    const { mean, count } = meanBetween(x, y, from, to);
    if (count >= 1 && x[0]! <= from && x[x.length - 1]! >= to) { reference = mean; referenceNm = 0.5 * (from + to); break; }
  }
  if (!Number.isFinite(reference)) {
    warnings.push({ code: 'no-reference-range', message: 'The curve has no part between 360 and 520 nm to compare with: measure to at least 410 nm.' });
    return { edgeNm: null, ratio: null, ratioError: null, warnings };
  }
  let at = x.length - 1;
  while (at > 0 && x[at]! > referenceNm) at--;
  if (!(reference > 10 * noise[at]!)) {
    warnings.push({ code: 'no-light', message: 'Hardly any light came through even in the visible: place the stone so that light passes.' });
    return { edgeNm: null, ratio: null, ratioError: null, warnings };
  }
  let edgeNm: number | null = null;
  for (let i = at; i > 0; i--) {
    if (y[i]! >= 0.5 * reference && y[i - 1]! < 0.5 * reference) {
      edgeNm = x[i]! - ((x[i]! - x[i - 1]!) * (y[i]! - 0.5 * reference)) / (y[i]! - y[i - 1]!);
      break;
    }
  }
  if (x[0]! > SHORT_WAVE_NM - SHORT_WAVE_HALF_NM) {
    warnings.push({ code: 'short-wave-not-covered', message: 'The curve does not reach 254 nm: the ratio can’t be given.' });
    return { edgeNm, ratio: null, ratioError: null, warnings };
  }
  const short = meanBetween(x, y, SHORT_WAVE_NM - SHORT_WAVE_HALF_NM, SHORT_WAVE_NM + SHORT_WAVE_HALF_NM);
  if (short.count === 0) return { edgeNm, ratio: null, ratioError: null, warnings };
  let near = 0;
  while (x[near]! < SHORT_WAVE_NM) near++;
  return { edgeNm, ratio: short.mean / reference, ratioError: noise[near]! / reference, warnings };
}

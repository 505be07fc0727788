import { atMost, isAbove } from './hypergeometric.ts';

/** Stones that make up at least so many per cent of a lot: rounded up, and at least one. */
export const stonesOfPercent = (lot: number, percent: number): number => Math.max(1, Math.ceil((lot * percent) / 100 - 1e-9));

/**
 * How many stones of a lot must be drawn at random and tested so that, if at least `grown` of them are laboratory-grown, at least one is
 * found with `confidence` (0 to 1). Exact, without putting back; supposes that every laboratory-grown stone that is tested is recognised.
 */
export function detectionSize(lot: number, grown: number, confidence: number): number {
  let low = 1;
  let high = lot - grown + 1;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (isAbove(atMost(0, { lot, grown, sample: middle }), 1 - confidence)) low = middle + 1;
    else high = middle;
  }
  return low;
}

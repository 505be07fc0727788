/** Round numbers along an axis, ascending, and the decimals that tell them apart. */
export type Ticks = { readonly values: readonly number[]; readonly step: number; readonly decimals: number };

/** The smallest of 1, 2, 2.5, 5 times a power of ten that is not below `rough`. */
export function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  // The last factor covers a quotient that rounding pushed just above 10.
  for (const factor of [1, 2, 2.5, 5, 10]) if (factor * power >= rough * (1 - 1e-9)) return factor * power;
  return 20 * power;
}

/** Decimals needed so that multiples of `step` print exactly. */
export function decimalsOf(step: number): number {
  for (let decimals = 0; decimals < 15; decimals++) {
    const scaled = step * 10 ** decimals;
    if (Math.round(scaled) >= 1 && Math.abs(scaled - Math.round(scaled)) < 1e-6 * scaled) return decimals;
  }
  return 15;
}

/**
 * At most `most` + 1 ticks between the ends, in either order of the ends; both ends included where they are round.
 * Empty when the range is empty or not finite.
 */
export function niceTicks(from: number, to: number, most: number): Ticks {
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  const span = high - low;
  // Below this share of the values the twelve digits kept would not tell ticks apart.
  if (!Number.isFinite(span) || most < 1 || span <= Math.max(Math.abs(low), Math.abs(high)) * 1e-9) return { values: [], step: 0, decimals: 0 };
  const step = niceStep(span / most);
  const first = Math.ceil(low / step - 1e-6);
  const last = Math.floor(high / step + 1e-6);
  const values: number[] = [];
  for (let k = first; k <= last; k++) values.push(Number((k * step).toPrecision(12)));
  return { values, step, decimals: decimalsOf(step) };
}

/** A range whose ends are round numbers, so that the frame ends on a tick. */
export function niceRange(low: number, high: number, most: number): [number, number] {
  const span = high - low;
  if (!Number.isFinite(span) || span <= 0) return [low, high];
  const step = niceStep(span / most);
  return [Number((Math.floor(low / step + 1e-9) * step).toPrecision(12)), Number((Math.ceil(high / step - 1e-9) * step).toPrecision(12))];
}

/** Mean ± this many mean moving ranges are the limits of a chart of individual values: 3/d2 with d2 = 1.128379 for two neighbours (W. A. Shewhart's chart, NIST/SEMATECH e-Handbook, 6.3.2.2). */
export const INDIVIDUALS_FACTOR = 3 / 1.128379167;

/** Fewer values than this give limits that are mostly chance: common practice, no source. */
export const FEWEST_FOR_LIMITS = 8;

/** So many values, the first ones, set the limits where there are more: common practice (20 to 25), no source. */
export const BASE_LENGTH = 20;

export type ControlRule = 'beyond-3' | 'two-of-three' | 'four-of-five' | 'eight-in-a-row';

/** Western Electric, Statistical Quality Control Handbook (1956), rules 1 to 4. */
export const CONTROL_RULES: Readonly<Record<ControlRule, string>> = {
  'beyond-3': 'beyond three standard deviations',
  'two-of-three': 'two of three beyond two standard deviations on one side',
  'four-of-five': 'four of five beyond one standard deviation on one side',
  'eight-in-a-row': 'eight in a row on one side of the mean',
};

export type ControlLimits = {
  readonly mean: number;
  /** Standard deviation from the mean moving range. */
  readonly sigma: number;
  readonly low: number; readonly high: number;
  /** How many of the first values they rest on. */
  readonly from: number;
};

/** Limits from the first values in the order of time; null where there are too few, or all are the same. */
export function controlLimits(values: readonly number[]): ControlLimits | null {
  const base = values.slice(0, BASE_LENGTH);
  if (base.length < FEWEST_FOR_LIMITS) return null;
  const mean = base.reduce((sum, value) => sum + value, 0) / base.length;
  const ranges = base.slice(1).map((value, i) => Math.abs(value - base[i]!));
  const sigma = (ranges.reduce((sum, range) => sum + range, 0) / ranges.length) * (INDIVIDUALS_FACTOR / 3);
  if (sigma === 0) return null;
  return { mean, sigma, low: mean - 3 * sigma, high: mean + 3 * sigma, from: base.length };
}

type WindowRule = { readonly rule: ControlRule; readonly length: number; readonly needed: number; readonly beyond: number };

const WINDOWS: readonly WindowRule[] = [
  { rule: 'two-of-three', length: 3, needed: 2, beyond: 2 },
  { rule: 'four-of-five', length: 5, needed: 4, beyond: 1 },
  { rule: 'eight-in-a-row', length: 8, needed: 8, beyond: 0 },
];

/**
 * Rules that each value completes, of values in standard deviations from the mean in the order of time. A value exactly on a border is not beyond it,
 * and of several values beyond a border only one that is itself beyond completes a rule.
 */
export function controlSignals(deviations: readonly number[]): ControlRule[][] {
  return deviations.map((value, i) => {
    const found: ControlRule[] = Math.abs(value) > 3 ? ['beyond-3'] : [];
    const side = Math.sign(value);
    for (const { rule, length, needed, beyond } of WINDOWS) {
      if (i + 1 < needed || Math.abs(value) <= beyond) continue;
      const window = deviations.slice(Math.max(0, i + 1 - length), i + 1);
      if (window.filter((one) => one * side > beyond).length >= needed) found.push(rule);
    }
    return found;
  });
}

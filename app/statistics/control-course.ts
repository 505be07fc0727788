import { controlLimits, controlSignals, type ControlLimits, type ControlRule } from './control-chart.ts';

/** One value of a course; `begins` where limits begin anew with it. */
export type CourseValue = { readonly value: number; readonly begins: boolean };

/** A stretch of a course with limits of its own, from one break to the next. */
export type CourseBase = { readonly from: number; readonly count: number; readonly limits: ControlLimits | null };

export type ControlCourse = {
  readonly bases: readonly CourseBase[];
  /** For each value: its base, and the rules it completes within it. */
  readonly points: readonly { readonly base: number; readonly signals: readonly ControlRule[] }[];
};

/**
 * A course of individual values in the order of time whose limits begin anew at each break: each stretch is judged by its own first values, and no rule looks across a break.
 * That a chart is begun anew after a deliberate change of the process is common practice, no source.
 */
export function controlCourse(values: readonly CourseValue[]): ControlCourse {
  const starts = values.flatMap(({ begins }, i) => (i === 0 || begins ? [i] : []));
  const stretches = starts.map((from, k) => ({ from, values: values.slice(from, starts[k + 1]).map(({ value }) => value) }));
  const bases = stretches.map(({ from, values: own }): CourseBase => ({ from, count: own.length, limits: controlLimits(own) }));
  return {
    bases,
    points: stretches.flatMap(({ values: own }, base) => {
      const { limits } = bases[base]!;
      const signals = limits === null ? [] : controlSignals(own.map((value) => (value - limits.mean) / limits.sigma));
      return own.map((_value, i) => ({ base, signals: signals[i] ?? [] }));
    }),
  };
}

import { ASYMMETRIC_DEFAULTS, asymmetricLeastSquares, BASELINE_DEFAULTS, baselineUnderLines, lambdaForPeriod } from './baseline.ts';
import { adaptiveBaseline, AIR_DEFAULTS, AR_DEFAULTS, reweightedBaseline } from './penalised-baselines.ts';

/** Ways to a baseline: the program's own with the measured noise, and three published ones, for comparison with other work. */
export const BASELINES = ['under-lines', 'asls', 'airpls', 'arpls'] as const;
export type BaselineKind = (typeof BASELINES)[number];

/** The baseline of y that bends no faster than `period`, in points. noise: one standard deviation per point; only 'under-lines' uses it. */
export function baselineOf(kind: BaselineKind, y: Float64Array, noise: Float64Array, period: number): Float64Array {
  const lambda = lambdaForPeriod(period);
  switch (kind) {
    case 'under-lines': return baselineUnderLines(y, noise, { ...BASELINE_DEFAULTS, lambda });
    case 'asls': return asymmetricLeastSquares(y, { ...ASYMMETRIC_DEFAULTS, lambda });
    case 'airpls': return adaptiveBaseline(y, { ...AIR_DEFAULTS, lambda });
    case 'arpls': return reweightedBaseline(y, { ...AR_DEFAULTS, lambda });
  }
}

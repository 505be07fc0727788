import type { InstrumentState } from '../domain/instrument-state.ts';

const DAY_MS = 86_400_000;

/**
 * Whether an instrument is in order at an instant, judged by its newest check up to then.
 * @param lastCheck newest check at or before `at`, or null
 * @param checkEveryDays the interval the house has set, days
 * @param at UTC ISO 8601
 */
export function instrumentStateAt(lastCheck: { readonly at: string; readonly passed: boolean } | null, checkEveryDays: number, at: string): Exclude<InstrumentState, 'no-instrument'> {
  if (lastCheck === null) return 'never-checked';
  if (!lastCheck.passed) return 'failed';
  return Date.parse(at) - Date.parse(lastCheck.at) > checkEveryDays * DAY_MS ? 'lapsed' : 'in-order';
}

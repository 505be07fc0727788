import type { InstrumentState } from '../domain/instrument-state.ts';
import { METHODS, type MethodId } from '../domain/method.ts';
import type { Observation } from '../domain/observation.ts';
import { runCounts } from './run-counts.ts';

export type RunInTime = { readonly number: string; readonly method: MethodId; readonly at: string; readonly observation: Observation | null };

export type RunWarning = { readonly code: string; readonly message: string };

/**
 * Minutes after short-wave light during which an after-glow may add to what is seen under long-wave.
 * Common practice, no source: long-wave first, then short-wave.
 */
export const AFTER_GLOW_MINUTES = 10;

/** Exposures to deep ultraviolet light, after which a stone may glow on. */
const SHORT_WAVE: readonly MethodId[] = ['fluorescence-short-wave', 'phosphorescence', 'growth-pattern'];

const INSTRUMENT_SENTENCES: Readonly<Record<Exclude<InstrumentState, 'in-order'>, string>> = {
  lapsed: 'The check of the instrument had lapsed at the time of the run: its findings are listed and do not count.',
  failed: 'The last check of the instrument before this run failed: its findings are listed and do not count.',
  'never-checked': 'The instrument had never been checked when this run was made: its findings are listed and do not count.',
  'no-instrument': 'No instrument is named for this run: its findings are listed and do not count.',
};

function orderWarning(run: RunInTime, others: readonly RunInTime[]): RunWarning | null {
  if (run.method !== 'fluorescence-long-wave') return null;
  const at = Date.parse(run.at);
  const before = others
    .filter((other) => SHORT_WAVE.includes(other.method) && other.number !== run.number)
    .map((other) => ({ other, minutes: (at - Date.parse(other.at)) / 60_000 }))
    .filter(({ minutes }) => minutes >= 0)
    .sort((a, b) => a.minutes - b.minutes);
  for (const { other, minutes } of before) {
    const glowMinutes = other.observation?.method === 'phosphorescence' ? other.observation.seconds / 60 : 0;
    if (minutes > Math.max(AFTER_GLOW_MINUTES, glowMinutes)) continue;
    return {
      code: 'short-wave-first',
      message: `Short-wave light came ${minutes < 1 ? 'less than a minute' : `${Math.round(minutes)} min`} before (${other.number}): an after-glow may add to what was seen. Long-wave belongs first; look again after the stone has rested in the dark.`,
    };
  }
  return null;
}

/** What a reader of a run must know before relying on it. `others` are the runs of the same stone. */
export function runWarnings(run: RunInTime, state: InstrumentState, others: readonly RunInTime[]): RunWarning[] {
  const warnings: RunWarning[] = [];
  if (!runCounts(run.method, state) && state !== 'in-order') warnings.push({ code: `instrument-${state}`, message: INSTRUMENT_SENTENCES[state] });
  const order = orderWarning(run, others);
  if (order !== null) warnings.push(order);
  const { name, yields } = METHODS[run.method];
  if (yields === 'spectrum' && run.observation !== null) warnings.push({ code: 'observed-only', message: `${name} was judged by eye in this run, without a curve.` });
  return warnings;
}

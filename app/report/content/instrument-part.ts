import type { RunView } from '../../contract/work.ts';
import { INSTRUMENT_STATE_WORDS } from '../../domain/instrument-state.ts';
import { METHODS } from '../../domain/method.ts';
import type { MethodsPart } from '../sections/methods.ts';
import type { ReportSource } from './report-source.ts';
import { settingsText } from './stone-result.ts';

const unique = (texts: readonly string[]): string[] => [...new Set(texts.filter((text) => text !== ''))];

/** What an instrument was set to; told for each method where there are several. */
function settingsOf(runs: readonly RunView[]): string {
  const methods = new Set(runs.map((run) => run.method));
  return unique(runs.map((run) => {
    const settings = settingsText(run);
    return settings === '' || methods.size === 1 ? settings : `${METHODS[run.method].name}: ${settings}`;
  })).join('; ');
}

function stateText(runs: readonly RunView[]): string {
  const states = [...new Set(runs.map((run) => run.instrumentState))];
  if (states.length === 1) return states[0] === 'in-order' ? 'in order on the day' : INSTRUMENT_STATE_WORDS[states[0]!];
  return states.map((state) => `${INSTRUMENT_STATE_WORDS[state]} (${runs.filter((run) => run.instrumentState === state).map((run) => run.number).join(', ')})`).join('; ');
}

/** Each instrument once, with what it was used for and how it stood; curves without a named instrument are told as such. */
export function instrumentParts(source: ReportSource): MethodsPart['instruments'] {
  const byName = new Map<string, RunView[]>();
  for (const run of source.stones.flatMap((entry) => entry.runs)) {
    if (run.instrument === null && METHODS[run.method].yields === 'observation') continue;
    const name = run.instrument ?? 'not named';
    byName.set(name, [...byName.get(name) ?? [], run]);
  }
  return [...byName].map(([name, runs]) => ({
    name, methods: unique(runs.map((run) => METHODS[run.method].name)).join('; '), settings: settingsOf(runs), state: stateText(runs),
  }));
}

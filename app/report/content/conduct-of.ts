import { INSTRUMENT_STATE_WORDS } from '../../domain/instrument-state.ts';
import { METHODS } from '../../domain/method.ts';
import { clauseByKey } from '../completeness/clauses.ts';
import { listWords } from '../count-words.ts';
import { STATEMENT_KINDS, type StatementKind } from '../draft/statement-kinds.ts';
import type { ReportFact } from '../fact.ts';
import { statesConformity } from './lot-conformity.ts';
import type { ConductPart } from '../sections/conduct.ts';
import { wasExamined, type ReportSource, type SourceStone } from './report-source.ts';

const LABELS: Readonly<Record<StatementKind, string>> = { place: 'Tests were made', conditions: 'Conditions', sampling: 'Sampling', external: 'From others' };

/** Stones of an item as counted, else as listed. */
const countOf = (item: SourceStone['item']): number => item.count ?? item.stones.length;

/** True where some stone of what is reported was not examined: then it matters how the tested ones were drawn. */
export function isSampled(source: Pick<ReportSource, 'case' | 'stones'>): boolean {
  const tested = source.stones.filter(wasExamined).length;
  const there = source.case.parcels.flatMap((parcel) => parcel.items).reduce((sum, item) => sum + Math.max(countOf(item), item.stones.length), 0);
  return tested < there;
}

/** What is said under one heading: this report's own words, else the laboratory's, else what follows from the records. */
function statementOf(kind: StatementKind, source: ReportSource): string {
  const own = source.writing.statements[kind].trim();
  if (own !== '') return own;
  if (kind === 'sampling' && !isSampled(source)) return 'none: every stone described here was tested';
  return source.texts[kind].text.trim();
}

function departuresOf({ stone, runs, conclusions }: SourceStone): string[] {
  const newest = conclusions.at(-1);
  const protocol = newest?.proposal.basis?.protocol;
  const done = new Set(runs.map((run) => run.method));
  const left = protocol?.asks.filter((method) => !done.has(method)).map((method) => METHODS[method].name) ?? [];
  const states = [...new Set(runs.filter((run) => run.instrumentState !== 'in-order' && (run.instrument !== null || METHODS[run.method].yields === 'spectrum')).map((run) => run.instrumentState))];
  return [
    ...(left.length === 0 ? [] : [`Stone ${stone.label}: the protocol “${protocol?.name ?? ''}” asks for ${listWords(left)}; not done.`]),
    ...states.map((state) => `Stone ${stone.label}: ${listWords(runs.filter((run) => run.instrumentState === state).map((run) => run.number))} with an instrument in the state “${INSTRUMENT_STATE_WORDS[state]}”; what it shows does not count.`),
    ...(newest === undefined || newest.departure.trim() === '' ? [] : [`Stone ${stone.label}: the conclusion departs from what the rules propose; the reason stands with the opinion.`]),
  ];
}

/** How the work was done, and where it departs from the laboratory's own protocol. */
export function conductOf(source: ReportSource): Omit<ConductPart, 'section'> {
  const facts = STATEMENT_KINDS.map((kind): ReportFact => ({ label: LABELS[kind], value: statementOf(kind, source), mono: false })).filter((fact) => fact.value !== '');
  return {
    facts, departures: source.stones.flatMap(departuresOf),
    notApplicable: Object.entries(source.writing.notApplicable).flatMap(([key, reason]) => {
      const clause = clauseByKey(key);
      return clause === undefined || !clause.mayNotApply || reason.trim() === '' || (key === 'conformity' && statesConformity(source)) ? [] : [{ clause: clause.clause, what: clause.asks, reason: reason.trim() }];
    }),
  };
}

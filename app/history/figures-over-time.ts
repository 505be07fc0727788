import { CONCLUSION_IDS, type ConclusionId } from '../domain/conclusion.ts';
import { clopperPearson, type Interval } from '../evaluation/clopper-pearson.ts';
import { spreadOf, type Spread } from '../statistics/quantile.ts';
import type { Step } from './steps.ts';

/** What the records say, instants in UTC ISO 8601; nothing needs to be in order, and what lies outside the steps does not count. */
export type TimeFacts = {
  /** Every case: when it came, and when it was done with (its first report, or given back without one); null while neither. */
  readonly cases: readonly { readonly receivedAt: string; readonly doneAt: string | null }[];
  /** Each report at its first issue. */
  readonly reports: readonly { readonly receivedAt: string; readonly issuedAt: string }[];
  readonly amended: readonly string[];
  readonly withdrawn: readonly string[];
  /** Each stone whose standing conclusion a second person confirmed: when, and what it says. */
  readonly settled: readonly { readonly at: string; readonly conclusion: ConclusionId }[];
};

/** A count of a larger count, with exact limits (Clopper and Pearson, 95 %, two-sided); `of` = 0 says nothing. */
export type Share = { readonly count: number; readonly of: number; readonly limits: Interval };

export type TimeFigures = {
  readonly received: number;
  readonly settled: number;
  readonly reported: number;
  readonly amended: number;
  readonly withdrawn: number;
  /** Cases that were here and not done with when the step ended. */
  readonly open: number;
  /** Days of 24 hours from a case's coming to the issue of a report. */
  readonly turnaround: Spread | null;
  readonly outcomes: Readonly<Record<ConclusionId, number>>;
  /** Stones whose standing conclusion is that further testing is required, of all that were settled. */
  readonly sentFurther: Share;
};

/** First instant of a step and the first after it. */
export type StepBounds = Step & { readonly begins: string; readonly ends: string };

const MS_PER_DAY = 86_400_000;

const share = (count: number, of: number): Share => ({ count, of, limits: clopperPearson(count, of) });

/** Place of the step that holds an instant among steps that follow one another; −1 outside. */
function stepAt(steps: readonly StepBounds[], at: string): number {
  let low = 0;
  let high = steps.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (steps[middle]!.ends <= at) low = middle + 1;
    else high = middle;
  }
  return low < steps.length && steps[low]!.begins <= at ? low : -1;
}

const byInstant = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** How many of some instants in order lie before one. */
function countBefore(sorted: readonly string[], end: string): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (sorted[middle]! < end) low = middle + 1;
    else high = middle;
  }
  return low;
}

function groupByStep<T>(steps: readonly StepBounds[], facts: readonly T[], at: (fact: T) => string): T[][] {
  const groups: T[][] = steps.map(() => []);
  for (const fact of facts) groups[stepAt(steps, at(fact))]?.push(fact);
  return groups;
}

function figuresOf(facts: Omit<TimeFacts, 'cases'> & { readonly received: number; readonly open: number }): TimeFigures {
  const outcomes = Object.fromEntries(CONCLUSION_IDS.map((id) => [id, 0])) as Record<ConclusionId, number>;
  for (const { conclusion } of facts.settled) outcomes[conclusion] += 1;
  return {
    received: facts.received, settled: facts.settled.length, reported: facts.reports.length, amended: facts.amended.length, withdrawn: facts.withdrawn.length, open: facts.open,
    turnaround: spreadOf(facts.reports.map(({ receivedAt, issuedAt }) => (Date.parse(issuedAt) - Date.parse(receivedAt)) / MS_PER_DAY)),
    outcomes, sentFurther: share(outcomes.undetermined, facts.settled.length),
  };
}

/**
 * The laboratory's figures for each of some steps that follow one another, and for all of them together.
 * @param steps at least one
 */
export function figuresOverTime(facts: TimeFacts, steps: readonly StepBounds[]): { readonly steps: readonly TimeFigures[]; readonly whole: TimeFigures } {
  const self = (at: string): string => at;
  const come = groupByStep(steps, facts.cases, (one) => one.receivedAt);
  const reports = groupByStep(steps, facts.reports, (one) => one.issuedAt);
  const amended = groupByStep(steps, facts.amended, self);
  const withdrawn = groupByStep(steps, facts.withdrawn, self);
  const settled = groupByStep(steps, facts.settled, (one) => one.at);
  const received = facts.cases.map(({ receivedAt }) => receivedAt).sort(byInstant);
  // Nothing is done with before it came, whatever a clock that was set back says.
  const done = facts.cases.flatMap(({ receivedAt, doneAt }) => (doneAt === null ? [] : [doneAt < receivedAt ? receivedAt : doneAt])).sort(byInstant);
  const openAt = (end: string): number => countBefore(received, end) - countBefore(done, end);
  const each = steps.map((step, i) => figuresOf({
    received: come[i]!.length, reports: reports[i]!, amended: amended[i]!, withdrawn: withdrawn[i]!, settled: settled[i]!, open: openAt(step.ends),
  }));
  const whole = figuresOf({
    received: come.flat().length, reports: reports.flat(), amended: amended.flat(), withdrawn: withdrawn.flat(), settled: settled.flat(), open: each.at(-1)?.open ?? 0,
  });
  return { steps: each, whole };
}

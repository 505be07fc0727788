import type { AgreementOutcome, CheckSeries, FiguresOutcome, TrialsOutcome } from '../contract/figures.ts';
import { CONCLUSION_IDS, CONCLUSION_WORDS } from '../domain/conclusion.ts';
import { missedAmongPassed, missedAtMost } from '../statistics/screening-figures.ts';
import { csvText, type CsvValue } from '../tables/csv-text.ts';

const rounded = (value: number | null | undefined, digits: number): number | null => (value === null || value === undefined || Number.isNaN(value) ? null : Number(value.toFixed(digits)));

const HEAD = [
  'step', 'from', 'to', 'whole step', 'cases received', 'stones settled', 'reports issued', 'reports amended', 'reports withdrawn', 'cases open at the end',
  'turnaround n', 'turnaround least days', 'turnaround lower quartile days', 'turnaround median days', 'turnaround upper quartile days', 'turnaround greatest days',
  ...CONCLUSION_IDS.map((id) => CONCLUSION_WORDS[id]), 'sent further', 'of', 'share', 'at least (95 %)', 'at most (95 %)',
];

/** The figures of every step and of the whole period as comma-separated text. Shares are fractions of one; days have 24 hours. */
export function overTimeCsv({ steps, whole }: FiguresOutcome): string {
  const row = (head: readonly CsvValue[], f: FiguresOutcome['whole']): CsvValue[] => [
    ...head, f.received, f.settled, f.reported, f.amended, f.withdrawn, f.open,
    f.turnaround?.n ?? 0, ...(['least', 'lower', 'median', 'upper', 'greatest'] as const).map((key) => rounded(f.turnaround?.[key], 3)),
    ...CONCLUSION_IDS.map((id) => f.outcomes[id]), f.sentFurther.count, f.sentFurther.of, f.sentFurther.of === 0 ? null : rounded(f.sentFurther.count / f.sentFurther.of, 6),
    ...(f.sentFurther.of === 0 ? [null, null] : [rounded(f.sentFurther.limits.low, 6), rounded(f.sentFurther.limits.high, 6)]),
  ];
  return csvText(HEAD, [...steps.map((step) => row([step.label, step.from, step.to, step.isPart ? 'no' : 'yes'], step)), row(['whole period', steps[0]?.from ?? null, steps.at(-1)?.to ?? null, null], whole)]);
}

/** Pairs of conclusions, first and second person, with how often each came. */
export function agreementCsv({ readFirst, seen }: AgreementOutcome): string {
  const rows = ([['stated before the first was shown', readFirst], ['the first was seen', seen]] as const).flatMap(([how, table]) => table.outcomes.flatMap((first, i) => table.outcomes.map((second, j): CsvValue[] => [
    how, CONCLUSION_WORDS[first], CONCLUSION_WORDS[second], table.counts[i]![j]!])));
  return csvText(['how', 'first person', 'second person', 'stones'], rows);
}

export const checksCsv = (series: readonly CheckSeries[]): string => csvText(
  ['instrument', 'quantity', 'unit', 'at (UTC)', 'by', 'value', 'expected', 'tolerance', 'in order', 'base', 'base begins after service at (UTC)', 'mean', 'lower limit', 'upper limit', 'signals'],
  series.flatMap(({ instrument, quantity, unit, points, bases }) => points.map(({ at, by, value, expected, tolerance, passed, base, signals }): CsvValue[] => {
    const { limits, service } = bases[base]!;
    return [instrument, quantity, unit, at, by, value, expected, tolerance, passed ? 'yes' : 'no', base + 1, service?.at ?? null, limits?.mean ?? null, limits?.low ?? null, limits?.high ?? null, signals.join('; ')];
  })));

export const trialsCsv = ({ trials }: Pick<TrialsOutcome, 'trials'>): string => csvText(
  ['sample', 'is', 'was said to be', 'concluded at (UTC)', 'examiner', 'examiner did not know', 'case', 'stone', 'instruments', 'remark', 'entered by', 'entered at (UTC)', 'counts', 'taken back by', 'taken back at (UTC)', 'why taken back'],
  trials.map(({ sample, truth, outcome, examinedAt, examiner, blind, stone, instruments, remark, by, at, counts, withdrawn }): CsvValue[] => [
    sample, CONCLUSION_WORDS[truth], CONCLUSION_WORDS[outcome], examinedAt, examiner, blind ? 'yes' : 'no', stone?.caseNumber ?? null, stone?.label ?? null, instruments.join('; '), remark, by, at,
    counts ? 'yes' : withdrawn === null ? 'no: origin of the sample was wrong' : 'no: taken back', withdrawn?.by ?? null, withdrawn?.at ?? null, withdrawn?.reason ?? null]));

/** Rates of a screening as they are named for people, and what each is a share of. */
export const RATES = [
  { key: 'falseNatural', name: 'False natural', says: 'not natural and said to be natural, of all that are not natural' },
  { key: 'detected', name: 'Detected', says: 'not natural and said so, of all that are not natural' },
  { key: 'falseAlarm', name: 'False alarm', says: 'natural and said to be something else, of all natural ones' },
  { key: 'referred', name: 'Sent on', says: 'without an answer, of all' },
  { key: 'referredNatural', name: 'Sent on, natural', says: 'of all natural ones' },
  { key: 'referredOther', name: 'Sent on, not natural', says: 'of all that are not natural' },
] as const satisfies readonly { readonly key: keyof TrialsOutcome['blind']; readonly name: string; readonly says: string }[];

/**
 * The rates with their exact limits, of trials in which the examiner did not know and of all, and what they would mean for a stone that was said to be natural.
 * Shares are fractions of one.
 * @param assumed per cent of what comes in that is not natural: an assumption, which stands in the table as such
 */
export function ratesCsv(outcome: Pick<TrialsOutcome, 'blind' | 'all'>, assumed: number): string {
  const rows = ([['examiner did not know', outcome.blind], ['all trials', outcome.all]] as const).flatMap(([which, figures]): CsvValue[][] => [
    ...RATES.map(({ key, name, says }): CsvValue[] => {
      const { count, of, limits, atMost } = figures[key];
      return [which, name, says, count, of, ...(of === 0 ? [null, null, null, null] : [count / of, limits.low, limits.high, atMost].map((value) => rounded(value, 6))), null];
    }),
    [which, 'Missed among passed', 'not natural, of all that are said to be natural, if that share of what comes in is not natural (assumed, no finding)', null, null,
      rounded(missedAmongPassed(figures, assumed / 100), 6), null, null, rounded(missedAtMost(figures, assumed / 100), 6), rounded(assumed / 100, 6)],
  ]);
  return csvText(['trials', 'rate', 'means', 'count', 'of', 'share', 'at least (95 %)', 'at most (95 %)', 'at most (95 %, one-sided)', 'assumed share that is not natural'], rows);
}

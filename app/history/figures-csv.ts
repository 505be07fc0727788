import type { AgreementOutcome, CheckSeries, FiguresOutcome, TrialsOutcome } from '../contract/figures.ts';
import { CONCLUSION_IDS, CONCLUSION_WORDS } from '../domain/conclusion.ts';
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
  ['instrument', 'quantity', 'unit', 'at (UTC)', 'by', 'value', 'expected', 'tolerance', 'in order', 'mean', 'lower limit', 'upper limit', 'signals'],
  series.flatMap(({ instrument, quantity, unit, expected, tolerance, points, limits }) => points.map(({ at, by, value, passed, signals }): CsvValue[] => [
    instrument, quantity, unit, at, by, value, expected, tolerance, passed ? 'yes' : 'no', limits?.mean ?? null, limits?.low ?? null, limits?.high ?? null, signals.join('; ')])));

export const trialsCsv = ({ trials }: Pick<TrialsOutcome, 'trials'>): string => csvText(
  ['sample', 'is', 'was said to be', 'concluded at (UTC)', 'examiner', 'examiner did not know', 'case', 'stone', 'remark', 'entered by', 'entered at (UTC)'],
  trials.map(({ sample, truth, outcome, examinedAt, examiner, blind, stone, remark, by, at }): CsvValue[] => [
    sample, CONCLUSION_WORDS[truth], CONCLUSION_WORDS[outcome], examinedAt, examiner, blind ? 'yes' : 'no', stone?.caseNumber ?? null, stone?.label ?? null, remark, by, at]));

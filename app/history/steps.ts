import { addDays } from '../custody/calendar.ts';

export const GRAINS = ['week', 'month', 'quarter', 'year'] as const;
export type Grain = (typeof GRAINS)[number];

/** One step of a period: calendar days yyyy-mm-dd, both included. */
export type Step = {
  readonly label: string; readonly from: string; readonly to: string;
  /** True where the period cuts it short: its numbers don't compare with those of a whole step. */
  readonly isPart: boolean;
};

const WEEK_DAYS = 7;
const MONTHS = 12;
const A_QUARTER = 3;

const partsOf = (day: string): { year: number; month: number } => ({ year: Number(day.slice(0, 4)), month: Number(day.slice(5, 7)) });
const firstOf = (year: number, month: number): string => `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-01`;
const monthsOn = (day: string, months: number): string => {
  const { year, month } = partsOf(day);
  const since = year * MONTHS + month - 1 + months;
  return firstOf(Math.floor(since / MONTHS), (since % MONTHS) + 1);
};

/** 1 for Monday to 7 for Sunday (ISO 8601). */
const weekday = (day: string): number => new Date(`${day}T00:00:00.000Z`).getUTCDay() || WEEK_DAYS;

/** "2026-W48": weeks begin on Monday, and belong to the year of their Thursday (ISO 8601-1:2019, 3.1.1.23). */
export function isoWeek(day: string): string {
  const thursday = addDays(day, 4 - weekday(day));
  const days = (Date.parse(thursday) - Date.parse(`${thursday.slice(0, 4)}-01-01`)) / 86_400_000;
  return `${thursday.slice(0, 4)}-W${String(Math.floor(days / WEEK_DAYS) + 1).padStart(2, '0')}`;
}

type Kind = { begin(day: string): string; next(begin: string): string; label(begin: string): string };

const KINDS: Readonly<Record<Grain, Kind>> = {
  week: { begin: (day) => addDays(day, 1 - weekday(day)), next: (begin) => addDays(begin, WEEK_DAYS), label: isoWeek },
  month: { begin: (day) => `${day.slice(0, 7)}-01`, next: (begin) => monthsOn(begin, 1), label: (begin) => begin.slice(0, 7) },
  quarter: {
    begin: (day) => { const { year, month } = partsOf(day); return firstOf(year, month - ((month - 1) % A_QUARTER)); },
    next: (begin) => monthsOn(begin, A_QUARTER),
    label: (begin) => `${begin.slice(0, 4)}-Q${(partsOf(begin).month - 1) / A_QUARTER + 1}`,
  },
  year: { begin: (day) => `${day.slice(0, 4)}-01-01`, next: (begin) => monthsOn(begin, MONTHS), label: (begin) => begin.slice(0, 4) },
};

/** The steps of a period in order; the first and the last are cut to it. Empty where it ends before it begins. */
export function stepsOf(from: string, to: string, grain: Grain): Step[] {
  const kind = KINDS[grain];
  const steps: Step[] = [];
  for (let begin = kind.begin(from); begin <= to; begin = kind.next(begin)) {
    const last = addDays(kind.next(begin), -1);
    const step = { from: begin < from ? from : begin, to: last > to ? to : last };
    steps.push({ label: kind.label(begin), ...step, isPart: step.from !== begin || step.to !== last });
  }
  return steps;
}

/** How many steps a period has at most, without making them. */
export const stepsAtMost = (from: string, to: string, grain: Grain): number =>
  Math.max(0, Math.ceil(((Date.parse(to) - Date.parse(from)) / 86_400_000 + 1) / { week: 7, month: 28, quarter: 90, year: 365 }[grain]) + 1);

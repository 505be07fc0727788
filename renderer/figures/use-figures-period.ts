import { useState } from 'react';
import type { FiguresPeriod } from '../../app/contract/figures.ts';
import type { Grain } from '../../app/history/steps.ts';
import { addDays } from '../../app/custody/calendar.ts';

export type ShownPeriod = FiguresPeriod & { readonly grain: Grain };

/** What was last looked at, kept while the window is open. */
let last: ShownPeriod | null = null;

const A_YEAR = 365;
const A_SEASON = 100;

/** The last twelve months up to today, by month. */
const aYearTo = (today: string): ShownPeriod => ({ from: `${addDays(today, -A_YEAR + 31).slice(0, 7)}-01`, to: today, grain: 'month' });

export const SPANS: readonly { readonly name: string; readonly of: (today: string, first: string) => ShownPeriod }[] = [
  { name: '3 months', of: (today) => ({ from: addDays(today, -90), to: today, grain: 'week' }) },
  { name: '12 months', of: aYearTo },
  { name: 'this year', of: (today) => ({ from: `${today.slice(0, 4)}-01-01`, to: today, grain: 'month' }) },
  { name: 'last year', of: (today) => { const year = Number(today.slice(0, 4)) - 1; return { from: `${year}-01-01`, to: `${year}-12-31`, grain: 'month' }; } },
  { name: 'all', of: (today, first) => ({ from: first, to: today, grain: Date.parse(today) - Date.parse(first) > 3 * A_YEAR * 86_400_000 ? 'quarter' : 'month' }) },
];

/** `first` is the day of the first case: a young laboratory does not begin with empty months. */
export function useFiguresPeriod(today: string, first: string | null = null): [ShownPeriod, (change: Partial<ShownPeriod>) => void] {
  const [shown, setShown] = useState<ShownPeriod>(() => {
    if (last !== null) return last;
    const year = aYearTo(today);
    const begin = first === null ? year.from : `${first.slice(0, 7)}-01`;
    return begin <= year.from ? year : { from: begin, to: today, grain: Date.parse(today) - Date.parse(begin) < A_SEASON * 86_400_000 ? 'week' : 'month' };
  });
  return [shown, (change) => { last = { ...shown, ...change }; setShown(last); }];
}

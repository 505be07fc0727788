import { useState } from 'react';
import { historyFilter, type HistoryFilter } from '../../app/contract/history.ts';

export const NO_FILTER: HistoryFilter = historyFilter.parse({});

/** What was last asked for, kept while the window is open: a person looks at a stone and comes back to the list. */
let last: HistoryFilter = NO_FILTER;

/** The filter of the history, and a way to change some of it. */
export function useHistoryFilter(): [HistoryFilter, (change: Partial<HistoryFilter>) => void] {
  const [filter, setFilter] = useState(last);
  return [filter, (change) => {
    last = { ...last, ...change };
    setFilter(last);
  }];
}

/** True while nothing narrows the list. */
export const isUnfiltered = (filter: HistoryFilter): boolean => Object.entries(NO_FILTER).every(([key, value]) => filter[key as keyof HistoryFilter] === value);

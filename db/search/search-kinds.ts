/** What can be found. Each kind has an index of its own, `search_client` and so on: one for all would be read through for a few clients among 100,000 stones. Row numbers rise with time: the newest come first. */
export const SEARCH_KINDS = ['client', 'case', 'stone', 'report', 'sealed'] as const;
export type SearchKind = (typeof SEARCH_KINDS)[number];

/** The table whose rows are entries of a kind. */
export const SEARCH_TABLES: Readonly<Record<SearchKind, string>> = { client: 'client', case: 'case_record', stone: 'stone', report: 'report', sealed: 'sealed_case' };

/** Far more entries than a laboratory will ever have. */
const RANGE = 2 ** 40;

/** Lowest and highest row number of a kind, so that one table says what each row stands for. */
export function rowRange(kind: SearchKind): { readonly low: number; readonly high: number } {
  const low = (SEARCH_KINDS.indexOf(kind) + 1) * RANGE;
  return { low, high: low + RANGE - 1 };
}

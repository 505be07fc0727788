import { z } from 'zod';

/** Which rows of a list are asked for: a list is read page by page, and the order is made where the records are. */
export const listPage = { limit: z.number().int().min(1).max(1000).default(200), offset: z.number().int().min(0).default(0) };

/** By what a list is sorted; null leaves it in its own order, to which rows of the same value keep. */
export const sortedBy = <const Key extends string>(keys: readonly [Key, ...Key[]]) => z.strictObject({ key: z.enum(keys), down: z.boolean() }).nullable().default(null);

export type SortedBy<Key extends string> = { readonly key: Key; readonly down: boolean } | null;

export const CASE_SORTS = ['number', 'client', 'next', 'stones', 'received', 'due', 'place'] as const;
export type CaseSort = (typeof CASE_SORTS)[number];
export const STONE_SORTS = ['case', 'label', 'conclusion', 'stage', 'weight', 'colour', 'client', 'runs'] as const;
export type StoneSort = (typeof STONE_SORTS)[number];
export const HISTORY_SORTS = ['case', 'label', 'received', 'client', 'conclusion', 'stage', 'people', 'colour', 'weight'] as const;
export type HistorySort = (typeof HISTORY_SORTS)[number];

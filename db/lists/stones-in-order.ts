import type { ReadDb } from '../handle.ts';
import { matchPartly } from '../search/search-words.ts';
import { rowRange } from '../search/search-kinds.ts';
import { inSlices, rangesInSlices } from './in-slices.ts';

export type Parameters = Readonly<Record<string, string | number | null>>;

/** Entries of the search index at a time: to find the place of every run of letters costs as much as some thousand of its rows. */
const ENTRIES = 4000;

/** Walks the index on the day of receipt: nothing is sorted. */
export const CASES_NEWEST_FIRST = 'SELECT rowid AS n FROM case_record ORDER BY received_at DESC, rowid DESC';

export type Wanted = {
  /** Tables behind `case_record n` and `stone s`, as far as `where` needs them. */
  readonly joins: string;
  /** What must hold, joined by AND; empty where all stones are wanted. */
  readonly where: string;
  readonly parameters: Parameters;
  /** How the stones of one case follow one another. */
  readonly within: string;
  /** Stones and their cases outside of which nothing is wanted; null where the words do not matter. */
  readonly among: Matching | null;
};

export type Matching = { readonly stones: ReadonlySet<number>; readonly cases: ReadonlySet<number> };

// A part of the index at a time: the words of a common phrase stand in every stone there is.
const MATCHING = `SELECT s.rowid AS stone, n.rowid AS inCase FROM (SELECT rowid AS row FROM search_stone WHERE search_stone MATCH @match AND rowid BETWEEN @low AND @high) h
  CROSS JOIN search_entry e ON e.row = h.row CROSS JOIN stone s ON s.id = e.id CROSS JOIN case_record n ON n.id = s.case_id`;

/** Row numbers of the stones whose entry in the index holds every word, and of their cases. */
export async function stonesHolding(db: ReadDb, terms: readonly string[]): Promise<Matching> {
  const { low: first, high: end } = rowRange('stone');
  const last = db.get<{ n: number | null }>('SELECT max(row) AS n FROM search_entry WHERE row BETWEEN ? AND ?', [first, end])?.n ?? first - 1;
  const stones = new Set<number>();
  const cases = new Set<number>();
  const match = matchPartly(terms);
  await rangesInSlices(first, last, (low, high) => {
    for (const { stone, inCase } of db.all<{ stone: number; inCase: number }>(MATCHING, { match, low, high })) { stones.add(stone); cases.add(inCase); }
    return [];
  }, ENTRIES);
  return { stones, cases };
}

/** Row numbers of the stones that are wanted, those of the newest cases first. */
export async function stonesInOrder(db: ReadDb, { joins, where, parameters, within, among }: Wanted): Promise<number[]> {
  const cases = db.all<{ n: number }>(CASES_NEWEST_FIRST).map(({ n }) => n).filter((n) => among?.cases.has(n) ?? true);
  const sql = `SELECT s.rowid AS n FROM case_record n CROSS JOIN stone s ON s.case_id = n.id ${joins}
    WHERE n.rowid IN (SELECT value FROM json_each(@cases)) ${where === '' ? '' : `AND ${where}`} ORDER BY n.received_at DESC, n.rowid DESC, ${within}`;
  return inSlices(cases, (some) => {
    const rows = db.all<{ n: number }>(sql, { ...parameters, cases: JSON.stringify(some) }).map(({ n }) => n);
    return among === null ? rows : rows.filter((n) => among.stones.has(n));
  });
}

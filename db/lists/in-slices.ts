import { aTurn } from '../a-turn.ts';
import type { ReadDb } from '../handle.ts';

/** Work between two turns of others, ms: what a person at the window does not notice. */
const STRETCH_MS = 8;
const FIRST_SIZE = 50;
const MOST_AT_ONCE = 5000;
/** No more slices than this come of a list: each costs something by itself, and smaller ones would not make that less. */
const MOST_SLICES = 300;

/** How many rows to take next, after so many took so long: a slow machine, and a query that looks far, get smaller slices, but never less than `least`. */
const nextSize = (size: number, ms: number, least: number): number => Math.ceil(Math.max(least, Math.min(MOST_AT_ONCE, size * 2, (size * STRETCH_MS) / Math.max(ms, 0.1))));
const leastOf = (total: number): number => Math.ceil(total / MOST_SLICES);

/** Does `work` for the numbers from `first` to `last`, given the lowest and the highest of each slice, and lets others in between; `atLeast` where to begin one costs more than its rows. */
export async function rangesInSlices<R>(first: number, last: number, work: (low: number, high: number) => readonly R[], atLeast = 1): Promise<R[]> {
  const done: R[] = [];
  const least = Math.max(atLeast, leastOf(last - first + 1));
  let size = Math.max(FIRST_SIZE, least);
  for (let low = first, taken = 0; low <= last; low += taken) {
    const started = performance.now();
    taken = size;
    for (const one of work(low, low + taken - 1)) done.push(one);
    size = nextSize(size, performance.now() - started, least);
    await aTurn();
  }
  return done;
}

/** The same for a list, in its order: no list of a casebook may hold the window up. */
export const inSlices = <T, R>(all: readonly T[], work: (some: readonly T[]) => readonly R[]): Promise<R[]> =>
  rangesInSlices(0, all.length - 1, (low, high) => work(all.slice(low, high + 1)));

/** Rows of a query over a whole table, in the order of its row numbers; `sql` asks for those from `@low` to `@high`. */
export function rowsInSlices<Row>(db: ReadDb, table: string, sql: string, parameters: Readonly<Record<string, string | number | null>> = {}): Promise<Row[]> {
  const last = db.get<{ n: number | null }>(`SELECT max(rowid) AS n FROM ${table}`)!.n ?? 0;
  return rangesInSlices(1, last, (low, high) => db.all<Row>(sql, { ...parameters, low, high }));
}

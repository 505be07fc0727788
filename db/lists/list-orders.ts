import type { ReadDb } from '../handle.ts';

/** Orders that are kept: what a person goes back and forth between. */
const KEPT = 8;

/**
 * The row numbers of a list in its order, for as long as nothing is written: made once, then every page of the list is read by them.
 * An order costs eight bytes a row.
 */
export type ListOrders = { of(what: unknown, make: () => Promise<number[]>): Promise<readonly number[]> };

export function createListOrders(db: ReadDb): ListOrders {
  const known = new Map<string, { readonly written: number; readonly rows: Promise<readonly number[]> }>();
  // This connection alone writes the file: what it ever wrote says whether anything changed.
  const writtenSoFar = (): number => db.get<{ n: number }>('SELECT total_changes() AS n')!.n;
  return {
    of(what, make) {
      const key = JSON.stringify(what);
      const written = writtenSoFar();
      const kept = known.get(key);
      known.delete(key);
      const order = kept?.written === written ? kept : { written, rows: make() };
      known.set(key, order);
      order.rows.catch(() => { known.delete(key); });
      if (known.size > KEPT) known.delete(known.keys().next().value!);
      return order.rows;
    },
  };
}

/** Rows of a page, read in any order, as the list has them. */
export function inOrder<Row extends { readonly n: number }>(page: readonly number[], rows: readonly Row[]): Row[] {
  const byNumber = new Map(rows.map((row) => [row.n, row]));
  return page.flatMap((n) => byNumber.get(n) ?? []);
}

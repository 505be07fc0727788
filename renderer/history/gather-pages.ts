/** So many times a list is read anew that changed while it was read. */
const ATTEMPTS = 3;

type Page<Row> = { readonly total: number; readonly rows: readonly Row[] };

/**
 * Every row of a list that is handed out page by page, each made into `T` as it comes. A list that changes meanwhile would give a row twice or not at all: it is read anew then, and null where it never rests.
 * @param ask the page that begins at a row; it must hold at least one row while there are any
 */
export async function gatherPages<Row extends { readonly id: string }, T>(ask: (offset: number) => Promise<Page<Row>>, make: (row: Row) => T, progress: (done: number) => void): Promise<T[] | null> {
  for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
    const made: T[] = [];
    const ids = new Set<string>();
    for (let total = Infinity; made.length < total;) {
      const page = await ask(made.length);
      if (page.rows.length === 0 || (total !== Infinity && page.total !== total)) break;
      ({ total } = page);
      for (const row of page.rows) { made.push(make(row)); ids.add(row.id); }
      progress(made.length);
      if (made.length >= total && ids.size === total) return made;
    }
  }
  return null;
}

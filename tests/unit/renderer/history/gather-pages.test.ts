import { expect, test } from 'vitest';
import { gatherPages } from '../../../../renderer/history/gather-pages.ts';

const rowsOf = (count: number) => Array.from({ length: count }, (_, i) => ({ id: `s${i}` }));
const pageOf = (rows: readonly { id: string }[], offset: number, size = 3) => ({ total: rows.length, rows: rows.slice(offset, offset + size) });

test('every row of a list comes once, page by page', async () => {
  const rows = rowsOf(8);
  const asked: number[] = [];
  const told: number[] = [];
  expect(await gatherPages(async (offset) => { asked.push(offset); return pageOf(rows, offset); }, (row) => row.id, (done) => { told.push(done); })).toEqual(rows.map(({ id }) => id));
  expect([asked, told]).toEqual([[0, 3, 6], [3, 6, 8]]);
});

test('a list that changed while it was read is read anew: a row more, or another order', async () => {
  for (const changed of [rowsOf(9), rowsOf(8).reverse()]) {
    let times = 0;
    expect(await gatherPages(async (offset) => { times += 1; return pageOf(times < 2 ? rowsOf(8) : changed, offset); }, (row) => row.id, () => undefined)).toEqual(changed.map(({ id }) => id));
    expect(times).toBeGreaterThan(3);
  }
});

test('one that never rests, and one without rows, come to an end', async () => {
  let count = 4;
  expect(await gatherPages(async (offset) => { count += 1; return pageOf(rowsOf(count), offset); }, (row) => row.id, () => undefined)).toBeNull();
  expect(await gatherPages(async () => ({ total: 0, rows: [] }), (row: { id: string }) => row.id, () => undefined)).toBeNull();
});

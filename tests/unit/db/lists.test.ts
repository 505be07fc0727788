import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { historyFilter } from '../../../app/contract/history.ts';
import { HISTORY_SORTS, STONE_SORTS, CASE_SORTS } from '../../../app/contract/list-page.ts';
import { aTurn } from '../../../db/a-turn.ts';
import { inSlices, rangesInSlices } from '../../../db/lists/in-slices.ts';
import { createListOrders } from '../../../db/lists/list-orders.ts';
import { sortRows } from '../../../db/lists/sort-rows.ts';
import { CASES_NEWEST_FIRST } from '../../../db/lists/stones-in-order.ts';
import { CASES_IN_HOUSE } from '../../../db/store/whereabouts.ts';
import { openMade, makeCasebook, type Made } from '../../bench/ledgers/make-casebook.ts';
import { temporaryFolder } from './made-casebook.ts';

let made: Made;
const FOLDER = temporaryFolder();
beforeAll(async () => {
  (await makeCasebook(FOLDER, 600, () => {})).casebook.close();
  made = openMade(FOLDER);
}, 60_000);
afterAll(() => { made.casebook.close(); });

const everything = historyFilter.parse({});

describe('pages of a list', () => {
  test('hold every row once, in one order, whatever their size', async () => {
    const { history, stones, cases } = made.casebook;
    for (const list of [
      (page: { limit: number; offset: number }) => history.stones({ ...everything, ...page }, null),
      (page: { limit: number; offset: number }) => stones.list({ text: '', ...page }),
      (page: { limit: number; offset: number }) => cases.list({ text: '', state: 'all', ...page }),
    ]) {
      const whole = await list({ limit: 1000, offset: 0 });
      const parts = [];
      for (let offset = 0; offset < whole.total; offset += 7) parts.push(...(await list({ limit: 7, offset })).rows);
      expect(parts).toEqual(whole.rows);
      expect(new Set(whole.rows.map(({ id }) => id)).size).toBe(whole.total);
    }
  });

  // The orders that the window made itself when it had all rows: a collator over what a column shows.
  test.each([...HISTORY_SORTS.map((key) => ['history', key] as const), ...STONE_SORTS.map((key) => ['stones', key] as const), ...CASE_SORTS.map((key) => ['cases', key] as const)])('%s sorted by %s rise, and fall', async (list, key) => {
    const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
    const ask = async (sort: { key: never; down: boolean } | null): Promise<Record<string, unknown>[]> => {
      const page = { sort, limit: 1000, offset: 0 };
      const { rows } = list === 'history' ? await made.casebook.history.stones({ ...everything, ...page }, null) : list === 'stones' ? await made.casebook.stones.list({ text: '', ...page }) : await made.casebook.cases.list({ text: '', state: 'all', ...page });
      return rows as Record<string, unknown>[];
    };
    const words = { concluded: 'second person to confirm', confirmed: 'confirmed', disagreed: 'second person disagrees', open: 'open' } as Record<string, string>;
    const shown = (row: Record<string, unknown>): string | number => {
      const of: Record<string, unknown> = { case: row['caseNumber'], number: row['number'], label: `${String(row['caseNumber'])} ${String(row['label'])}`, received: row['receivedAt'], client: row['clientName'], conclusion: row['conclusion'] ?? '', stage: words[String(row['stage'])], people: row['concludedBy'], colour: row['colourClass'], weight: row['weight'] ?? -1, runs: row['runs'], next: row['next'], due: row['dueOn'] ?? '9999', place: row['place'] };
      return key === 'stones' ? (row['stones'] === 0 ? 1 : Number(row['confirmed']) / Number(row['stones'])) : of[key] as string | number;
    };
    const compare = (a: string | number, b: string | number) => (typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b)));
    const plain = await ask(null);
    const [up, down] = [await ask({ key: key as never, down: false }), await ask({ key: key as never, down: true })];
    expect(up.map(shown)).toEqual(plain.map(shown).sort(compare));
    expect(down.map(shown)).toEqual(plain.map(shown).sort((a, b) => compare(b, a)));
    // What is the same stays in the order of the list.
    if (key !== 'stage') expect(up.map(({ id }) => id)).toEqual(plain.map((row) => ({ row, key: shown(row) })).sort((a, b) => compare(a.key, b.key)).map(({ row }) => row['id']));
  });

  test('words find what the whole table read through would find', async () => {
    for (const text of ['boron', 'em', 'lines pattern', 'müller', '736.8', 'zirconium', 'C-2020-0003']) {
      const found = await made.casebook.history.stones({ ...everything, text, limit: 1000 }, null);
      const byIndex = made.casebook.handle.read.all<{ id: string }>(`SELECT e.id FROM search_entry e WHERE e.kind = 'stone' AND e.row IN (SELECT rowid FROM search_stone WHERE search_stone MATCH @match)`,
        { match: text.split(' ').map((word) => `"${word.length < 3 ? '  ' : ''}${word.toLowerCase().replace('ü', 'u')}"`).join(' AND ') });
      expect([text, new Set(found.rows.map(({ id }) => id))]).toEqual([text, new Set(byIndex.map(({ id }) => id))]);
    }
  });

  test('is made anew when anything was written, and else once', async () => {
    const orders = createListOrders(made.casebook.handle.read);
    let times = 0;
    const ask = () => orders.of({ list: 'some' }, async () => { times += 1; return [times]; });
    expect([await ask(), await ask(), times]).toEqual([[1], [1], 1]);
    made.casebook.handle.transactNow((tx) => { tx.run(`UPDATE number_counter SET last = last WHERE kind = 'case'`); });
    expect([await ask(), times]).toEqual([[2], 2]);
    await expect(orders.of('fails', async () => { throw new Error('once'); })).rejects.toThrow('once');
    expect(await orders.of('fails', async () => [7])).toEqual([7]);
  });
});

describe('reading in slices', () => {
  test('gives every one once, in order, and lets others in between', async () => {
    const all = Array.from({ length: 3000 }, (_, i) => i);
    let between = 0;
    let going = true;
    const others = (async () => { while (going) { between += 1; await aTurn(); } })();
    expect(await inSlices(all, (some) => some.map((n) => { for (let i = 0; i < 20_000; i++) Math.sqrt(i); return n; }))).toEqual(all);
    const ranges: number[] = [];
    expect(await rangesInSlices(5, 3004, (low, high) => { ranges.push(high - low + 1); return all.slice(low - 5, high - 4); })).toEqual(all);
    going = false;
    await others;
    expect(between).toBeGreaterThan(5);
    expect(ranges[0]).toBeLessThanOrEqual(50);
    expect(await inSlices([], () => [1])).toEqual([]);
  });

  test('makes no more slices than a few hundred, however long each takes', async () => {
    let slices = 0;
    const slow = () => { slices += 1; for (const end = performance.now() + 10; performance.now() < end;); return []; };
    await rangesInSlices(1, 110_000, slow);
    expect(slices).toBeLessThanOrEqual(300);
    slices = 0;
    await rangesInSlices(1, 110_000, slow, 4000);
    expect(slices).toBeLessThanOrEqual(28);
    slices = 0;
    await inSlices(Array.from({ length: 11_000 }, (_, i) => i), slow);
    expect(slices).toBeLessThanOrEqual(300);
  });

  test('sorts parts of a key one after the other, and equal ones stay', async () => {
    const rows = Array.from({ length: 4000 }, (_, i) => i);
    const keys = rows.map((n) => [`C-${n % 7}`, n % 3 === 0 ? 'É' : 'e', n % 11] as const);
    const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
    const byKey = (a: number, b: number) => collator.compare(keys[a]![0], keys[b]![0]) || collator.compare(keys[a]![1], keys[b]![1]) || keys[a]![2] - keys[b]![2];
    expect(await sortRows(rows, keys, false)).toEqual([...rows].sort(byKey));
    expect(await sortRows(rows, keys, true)).toEqual([...rows].sort((a, b) => byKey(b, a)));
    expect(await sortRows([], [], false)).toEqual([]);
  });
});

describe('no list reads a whole ledger', () => {
  const plan = (sql: string, parameters: Record<string, string> = {}) => made.casebook.handle.read.all<{ detail: string }>(`EXPLAIN QUERY PLAN ${sql}`, parameters).map(({ detail }) => detail).join('\n');
  test('cases are walked on their index, not sorted', () => {
    expect(plan(CASES_NEWEST_FIRST)).toBe('SCAN case_record USING COVERING INDEX case_received');
  });
  test('what was returned is not looked at for what is in the house', () => {
    expect(plan(CASES_IN_HOUSE)).toContain('SEARCH n USING INDEX case_state_due (state=?)');
  });
  test('the newest entries come with their number, not with a count', async () => {
    const asked: string[] = [];
    const { read } = made.casebook.handle;
    const whole = [await made.casebook.audit.list({ caseId: null, limit: 3, offset: 0 }), await made.casebook.custody.list({ caseId: null, itemId: null, limit: 3, offset: 0 })];
    for (const [i, table] of (['audit_entry', 'custody_entry'] as const).entries()) {
      expect(whole[i]!.total).toBe(read.get<{ n: number }>(`SELECT count(*) AS n FROM ${table}`)!.n);
      asked.push(plan(`SELECT coalesce(max(e.seq), 0) AS n FROM ${table} e WHERE 1`));
    }
    expect(asked).toEqual(['SEARCH e', 'SEARCH e']);
  });
});

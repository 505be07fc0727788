import BetterSqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { appendAudit } from '../../../../db/ledger/append-audit.ts';
import { appendCustody } from '../../../../db/ledger/append-custody.ts';
import { openCasebook } from '../../../../db/open-casebook.ts';
import { intake, madeCasebook, type MadeCasebook } from '../made-casebook.ts';

let made: MadeCasebook;
const change = (operation: string) => ({ at: made.deps.now().toISOString(), personId: made.personId, operation });
const titles = async (text: string) => (await made.casebook.find.anything(text)).map((found) => `${found.kind} ${found.title}`);
const index = () => made.casebook.handle.read.all('SELECT kind, id FROM search_entry WHERE row IN (SELECT rowid FROM search_stone UNION SELECT rowid FROM search_case UNION SELECT rowid FROM search_client) ORDER BY kind, id');

beforeEach(async () => {
  made = await madeCasebook();
  for (let i = 0; i < 2; i++) {
    const taken = await made.casebook.cases.takeIn(change('cases.takeIn'), intake());
    if (!taken.ok) throw new Error(taken.error.message);
  }
});
afterEach(() => { made.casebook.close(); });

describe('the search index', () => {
  test('finds a case by what was noted while a piece of it changed hands, and says where', async () => {
    const { rows } = await made.casebook.cases.list({ text: '', state: 'all', limit: 10, offset: 0 });
    const { id } = rows.find((row) => row.number === 'C-2026-0002')!;
    const itemId = (await made.casebook.cases.get(id))!.parcels[0]!.items[0]!.id;
    expect(await titles('velvet')).toEqual([]);
    await made.casebook.handle.transact((tx) => {
      appendCustody(tx, change('custody.append'), { caseId: id, itemId, content: { event: 'tested', place: 'Safe 1', note: 'lies in the velvet tray' } });
      appendAudit(tx, change('custody.append'), { subject: 'test', caseId: id, content: {} });
    });
    expect(await titles('velvet')).toEqual(['case C-2026-0002']);
    await made.casebook.find.rebuild();
    expect(await titles('velvet')).toEqual(['case C-2026-0002']);
  });

  test('holds every client, case and stone as soon as they are taken in', async () => {
    expect(await titles('C-2026-0002')).toEqual(expect.arrayContaining(['case C-2026-0002']));
    expect((await titles('0002')).every((title) => title.includes('C-2026-0002'))).toBe(true);
    expect(await titles('invented')).toContain('client Invented Client');
  });
  test('follows a client’s new name to its cases', async () => {
    const client = (await made.casebook.clients.search('invented'))[0]!;
    const { name: _old, cases: _cases, ...rest } = client;
    await made.casebook.clients.save(change('clients.save'), { ...rest, name: 'Quillfeather' });
    expect((await titles('quillf')).length).toBeGreaterThan(1);
    expect((await titles('invented client')).filter((title) => title.startsWith('client'))).toHaveLength(1);
    const { total } = await made.casebook.history.stones({ ...NO_FILTER, text: 'quillfeather' }, null);
    expect(total).toBe((await made.casebook.stones.list({ text: '', limit: 10, offset: 0 })).rows.filter((r) => r.clientName === 'Quillfeather').length);
  });
  test('keeps nothing of a transaction that was undone', async () => {
    const before = index();
    await expect(made.casebook.handle.transact((tx) => {
      tx.run(`UPDATE client SET name = 'Vanishing'`);
      throw new Error('undone');
    })).rejects.toThrow('undone');
    expect(await titles('vanishing')).toEqual([]);
    expect(index()).toEqual(before);
  });
  test('rebuilt, it finds the same', async () => {
    const before = [index(), await titles('a'), await titles('0001'), await titles('invented')];
    await made.casebook.find.rebuild();
    expect([index(), await titles('a'), await titles('0001'), await titles('invented')]).toEqual(before);
  });
  test.each([
    ['at opening where it is missing', 'DELETE FROM search_entry'],
    ['at opening where it is damaged', 'UPDATE search_case_data SET block = zeroblob(length(block)) WHERE id > 10'],
  ])('is made anew %s', async (_when, damage) => {
    const before = await titles('0001');
    made.casebook.close();
    const sqlite = new BetterSqlite(made.file);
    sqlite.unsafeMode();
    sqlite.exec(damage);
    sqlite.close();
    const opened = openCasebook(made.options);
    if (!opened.ok) throw new Error(opened.error.message);
    made = { ...made, casebook: opened.value };
    expect(await titles('0001')).toEqual(before);
  });
  test('says where a word stands that the hit does not show', async () => {
    const { id, caseId } = (await made.casebook.stones.list({ text: '', limit: 1, offset: 0 })).rows[0]!;
    await made.casebook.handle.transact((tx) => {
      tx.run(`INSERT INTO finding VALUES ('f', ?, ?, NULL, NULL, 'examiner', 'own-words', 'Line at 736.8 nm, SiV−', 'clear', 'nothing', 'photoluminescence', '', '', 'accepted', '', NULL, NULL, ?)`, [caseId, id, change('').at]);
      tx.written.forget();
      tx.run(`UPDATE finding SET state = 'accepted' WHERE id = 'f'`);
      tx.written.take();
    });
    expect((await made.casebook.find.anything('siv')).map((found) => found.detail)).toEqual([expect.stringContaining('finding: Line at 736.8 nm, SiV−')]);
  });
  test('answers whatever is typed', async () => {
    const random = seededRandom(7);
    const pieces = ['"', '*', '(', ')', 'AND', 'OR', 'NOT', 'NEAR(', '^', ':', '-', 'own:', '{', '}', '+', '\u0000', '😀', 'é', 'a', '0001', "'", ';', '%', '_', '\\', ',', '\u202e', 'ﬁ'];
    for (let i = 0; i < 400; i++) {
      const text = Array.from({ length: 1 + random.below(6) }, () => pieces[random.below(pieces.length)]! + (random.below(2) === 0 ? ' ' : '')).join('');
      expect(Array.isArray(await made.casebook.find.anything(text)), text).toBe(true);
      expect((await made.casebook.history.stones({ ...NO_FILTER, text }, null)).total, text).toBeGreaterThanOrEqual(0);
    }
  });
});

const NO_FILTER = {
  text: '', clientId: null, from: null, to: null, state: null, stage: null, conclusion: null, personId: null, instrumentId: null, method: null, colourClass: null, setting: null,
  sentFurther: null, disagreement: null, limit: 1000,
} as const;

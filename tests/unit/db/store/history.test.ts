import { afterAll, beforeAll, expect, test } from 'vitest';
import { historyFilter, type HistoryFilter } from '../../../../app/contract/history.ts';
import { appendAudit } from '../../../../db/ledger/append-audit.ts';
import { looseItem, madeCasebook, intake, ringItem, type MadeCasebook } from '../made-casebook.ts';

let made: MadeCasebook;
const change = () => ({ at: made.deps.now().toISOString(), personId: made.personId, operation: 'test' });
const found = async (filter: Partial<HistoryFilter>) => (await made.casebook.history.stones({ ...historyFilter.parse({}), ...filter, limit: 100 }, null)).rows.map((r) => `${r.caseNumber} ${r.label}`);

beforeAll(async () => {
  made = await madeCasebook();
  const { casebook } = made;
  await casebook.cases.takeIn(change(), intake([looseItem()], { client: { name: 'Alpha', address: '', email: '', phone: '', note: '' }, remarks: 'for the insurer' }));
  await casebook.cases.takeIn(change(), intake([ringItem()], { client: { name: 'Beta', address: '', email: '', phone: '', note: '' } }));
  const { rows } = await casebook.stones.list({ text: '', limit: 10, offset: 0 });
  const ids = rows.map((r) => [r.id, r.caseId] as const);
  await casebook.handle.transact((tx) => {
    const conclude = (id: string, [stone, caseId]: readonly [string, string], ordinal: number, conclusion: string) =>
      tx.run(`INSERT INTO conclusion (id, case_id, stone_id, ordinal, conclusion, reasons, proposal, rules, finding_ids, departure, person_id, at) VALUES (?, ?, ?, ?, ?, '', '{}', '', '[]', '', ?, '2026-03-02T12:00:00.000Z')`, [id, caseId, stone, ordinal, conclusion, made.personId]);
    conclude('first', ids[0]!, 1, 'undetermined');
    conclude('second', ids[0]!, 2, 'natural');
    conclude('other', ids[1]!, 1, 'grown-cvd');
    tx.run(`INSERT INTO confirmation VALUES ('a', 'other', ?, 0, 'no', '2026-03-02T13:00:00.000Z', NULL, NULL)`, [made.personId]);
    appendAudit(tx, change(), { subject: 'test', caseId: null, content: {} });
  });
});
afterAll(() => { made.casebook.close(); });

test.each<[Partial<HistoryFilter>, string[]]>([
  [{}, ['C-2026-0002 A-1', 'C-2026-0002 A-2', 'C-2026-0002 A-3', 'C-2026-0001 A-1']],
  [{ text: 'alpha' }, ['C-2026-0001 A-1']], [{ text: 'insurer 0001' }, ['C-2026-0001 A-1']], [{ text: 'cvd growth' }, ['C-2026-0002 A-2']],
  [{ setting: 'loose' }, ['C-2026-0001 A-1']], [{ conclusion: 'natural' }, ['C-2026-0002 A-1']], [{ conclusion: 'undetermined' }, []],
  [{ sentFurther: true }, ['C-2026-0002 A-1']], [{ disagreement: true }, ['C-2026-0002 A-2']], [{ stage: 'concluded' }, ['C-2026-0002 A-1']], [{ stage: 'disagreed' }, ['C-2026-0002 A-2']],
  [{ stage: 'open', setting: 'mounted' }, ['C-2026-0002 A-3']], [{ from: '2026-03-03' }, []], [{ from: '2026-03-02', to: '2026-03-02', setting: 'loose' }, ['C-2026-0001 A-1']],
  [{ state: 'returned' }, []], [{ method: 'infrared' }, []], [{ instrumentId: 'none' }, []], [{ colourClass: 'blue-grey' }, []], [{ personId: 'nobody' }, []], [{ clientId: 'nobody' }, []],
])('%o', async (filter, expected) => {
  expect(await found(filter)).toEqual(expected);
});

test('a page counts all that fit', async () => {
  expect(await made.casebook.history.stones({ ...historyFilter.parse({}), limit: 2 }, null)).toMatchObject({ total: 4, rows: [{ label: 'A-1' }, { label: 'A-2' }] });
});

test('offers only clients who have a case, and the days there are', async () => {
  const choices = await made.casebook.history.choices('2026-05-01T23:30:00.000Z');
  expect(choices).toMatchObject({ clients: [{ name: 'Alpha' }, { name: 'Beta' }], people: [{ name: 'Ada Invented' }], instruments: [], first: '2026-03-02', today: '2026-05-02' });
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { BENCH_CASES } from '../../../../db/store/bench.ts';
import { intake, looseItem, lotItem, madeCasebook, ringItem, type MadeCasebook } from '../made-casebook.ts';

let made: MadeCasebook;
const ids: string[] = [];

async function takeIn(...args: Parameters<typeof intake>): Promise<string> {
  const outcome = await made.casebook.cases.takeIn({ at: made.deps.now().toISOString(), personId: made.personId, operation: 'cases.takeIn' }, intake(...args));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.error));
  return outcome.value.caseId;
}

const client = (name: string) => ({ client: { name, address: '', email: '', phone: '', note: '' } });

beforeAll(async () => {
  made = await madeCasebook();
  ids.push(await takeIn([looseItem({ declared: 'Émeraude? no, diamond' })], { ...client('Müller & Söhne'), dueOn: '2026-03-05' }));
  ids.push(await takeIn([ringItem(), lotItem()], { ...client('Beta'), dueOn: null, remarks: '100% sure_thing' }));
  ids.push(await takeIn([looseItem()], { ...client('Gamma'), dueOn: '2026-04-30' }));
});
afterAll(() => { made.casebook.close(); });

const list = (text: string, state: 'all' | 'open' | 'reported' = 'all') => made.casebook.cases.list({ text, state, limit: 10, offset: 0 });

describe('lists', () => {
  test('cases, newest first, with what they hold and what comes next', async () => {
    const { total, rows } = await list('');
    expect(total).toBe(3);
    expect(rows.map((r) => [r.number, r.summary, r.stones, r.next, r.place])).toEqual([
      ['C-2026-0003', 'round brilliant, said to be natural', 1, '1 stone to test', 'safe 2'],
      ['C-2026-0002', '1 piece of jewellery and a lot of 340', 3, '3 stones to test', 'safe 2'],
      ['C-2026-0001', 'Émeraude? no, diamond', 1, '1 stone to test', 'safe 2'],
    ]);
  });
  test.each([['muller', 1], ['MÜLLER', 1], ['emeraude', 1], ['0002', 1], ['%', 1], ['e_t', 1], ['zzz', 0], ['diamond', 1]])('looking for %s finds %i', async (text, found) => {
    expect((await list(text)).total).toBe(found);
  });
  test('pages and states', async () => {
    expect((await made.casebook.cases.list({ text: '', state: 'open', limit: 1, offset: 1 })).rows.map((r) => r.number)).toEqual(['C-2026-0002']);
    expect((await list('', 'reported')).total).toBe(0);
  });
  test('stones over all cases', async () => {
    const all = await made.casebook.stones.list({ text: '', limit: 10, offset: 0 });
    expect(all.rows.map((r) => `${r.caseNumber} ${r.label} ${r.clientName}`)).toEqual(['C-2026-0003 A-1 Gamma', 'C-2026-0002 A-1 Beta', 'C-2026-0002 A-2 Beta', 'C-2026-0002 A-3 Beta', 'C-2026-0001 A-1 Müller & Söhne']);
    expect(await made.casebook.stones.list({ text: 'beta', limit: 2, offset: 1 })).toMatchObject({ total: 3, rows: [{ label: 'A-2' }, { label: 'A-3' }] });
  });
  test('the palette finds by all words', async () => {
    expect((await made.casebook.find.anything('0002 a-2')).map((f) => f.title)).toEqual(['C-2026-0002 A-2']);
    expect((await made.casebook.find.anything('MULLER')).map((f) => f.kind)).toEqual(['case', 'client']);
    expect(await made.casebook.find.anything('  ')).toEqual([]);
  });
});

describe('the bench', () => {
  test('sorts by due date in the laboratory’s zone', async () => {
    const numbers = (rows: { number: string }[]) => rows.map((r) => r.number);
    const before = await made.casebook.bench.today('2026-03-02T22:59:00.000Z', made.personId);
    expect([before.today, numbers(before.overdue), numbers(before.dueSoon), numbers(before.later)]).toEqual(['2026-03-02', [], ['C-2026-0001'], ['C-2026-0003', 'C-2026-0002']]);
    const after = await made.casebook.bench.today('2026-03-05T23:30:00.000Z', made.personId);
    expect([after.today, numbers(after.overdue)]).toEqual(['2026-03-06', ['C-2026-0001']]);
    expect(before.house).toEqual({ itemsInCustody: 4, itemsOut: 0, itemsOverdue: 0, weightsAgree: 0, weightsCompared: 0 });
    expect(before.counts).toMatchObject({ cases: 3, stones: 5, reports: 0, custodyEntries: 8 });
  });
  test('its query walks the index on state and due date and sorts no closed cases', () => {
    const plan = made.casebook.handle.read.all<{ detail: string }>(`EXPLAIN QUERY PLAN ${BENCH_CASES}`, { state: 'open' }).map((step) => step.detail);
    expect(plan.some((step) => step.includes('SEARCH n USING INDEX case_state_due (state=?)')), plan.join('\n')).toBe(true);
    expect(plan.filter((step) => step.startsWith('SCAN'))).toEqual([]);
  });
  test.each([
    ['returned', `json_extract(content, '$.event') = 'returned'`, 'custody_returned'],
    ['compared', `json_extract(content, '$.differs') IS NOT NULL`, 'custody_compared'],
    ['differing', `json_extract(content, '$.differs') = 1`, 'custody_differs'],
  ])('counting %s items reads a small index, not the ledger', (_name, where, index) => {
    const plan = made.casebook.handle.read.all<{ detail: string }>(`EXPLAIN QUERY PLAN SELECT count(*) FROM custody_entry WHERE ${where}`);
    expect(plan.map((step) => step.detail).join('\n')).toContain(index);
  });
});

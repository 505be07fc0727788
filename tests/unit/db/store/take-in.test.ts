import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { intake, looseItem, lotItem, madeCasebook, ringItem, steadyDeps, MIGRATIONS, type MadeCasebook } from '../made-casebook.ts';
import { writePng } from '../../../../main/demonstration/write-png.ts';

const PNG = writePng({ width: 2, height: 1, rgb: new Uint8Array(6) }, 'made for a test');
const change = ({ deps, personId }: MadeCasebook) => ({ at: deps.now().toISOString(), personId, operation: 'cases.takeIn' });

async function taken(made: MadeCasebook, ...args: Parameters<typeof intake>) {
  const outcome = await made.casebook.cases.takeIn(change(made), intake(...args));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.error));
  return (await made.casebook.cases.get(outcome.value.caseId))!;
}

describe('taking in', () => {
  test('a case with everything it holds, as the contract shows it', async () => {
    const made = await madeCasebook();
    const photographs = [{ name: 'ring.png', mediaType: 'image/png' as const, bytes: PNG, caption: 'as received', light: 'white' as const }];
    const view = await taken(made, undefined, {
      broughtBy: 'a courier', parcels: [
        { sealNumber: ' S-77 ', remarks: 'estate', items: [looseItem(), ringItem({ photographs })] },
        { sealNumber: '', remarks: '', items: [lotItem(), looseItem({ stones: [], grossWeight: 20_000, weightUnit: 'g' })] },
      ],
    });
    expect(view).toMatchObject({ number: 'C-2026-0001', state: 'open', createdBy: 'Ada Invented', client: { name: 'Invented Client', cases: 1 } });
    expect(view.parcels.map((p) => [p.sealNumber, p.items.map((i) => [i.label, i.kind, i.stones.map((s) => [s.label, s.mounted, s.weight, s.stage])])])).toEqual([
      ['S-77', [['A', 'loose', [['A-1', false, 10_234, 'open']]], ['B', 'jewellery', [['B-1', true, null, 'open'], ['B-2', true, null, 'open'], ['B-3', true, null, 'open']]]]],
      ['', [['C', 'lot', []], ['D', 'loose', [['D-1', false, 10_000, 'open']]]]],
    ]);
    expect(view.parcels[0]!.items[1]!.custody).toMatchObject({ place: 'safe 2', holder: 'Ada Invented', seal: 'S-77', differs: false });
    const custody = await made.casebook.custody.list({ caseId: view.id, itemId: view.parcels[0]!.items[1]!.id, limit: 10, offset: 0 });
    expect(custody.rows.map((r) => r.content).reverse()).toEqual([
      { event: 'received', from: 'a courier, for Invented Client', to: 'Ada Invented', place: 'safe 2' },
      { event: 'weighed', weight: 512_345, weightUnit: 'g' }, { event: 'sealed', seal: 'S-77' }, { event: 'photographed', note: 'one photograph' },
    ]);
    const photo = view.parcels[0]!.items[1]!.photographs[0]!;
    const content = await made.casebook.photographs.content(photo.id);
    expect(content.ok && content.value.bytes).toEqual(PNG);
    expect((await made.casebook.ledgers.verify({ at: 'now' }))!.parts.filter((part) => !part.sound)).toEqual([]);
    made.casebook.close();
  });
  test('numbers follow the year of the laboratory’s zone, without gaps where one was refused', async () => {
    // Opening looks at the clock once for each migration; the turn of the year then comes amid what is taken in.
    const migrations = readdirSync(MIGRATIONS).filter((name) => name.endsWith('.sql')).length;
    const made = await madeCasebook(steadyDeps(new Date(Date.parse('2026-12-31T22:59:54.000Z') - 1000 * migrations).toISOString()));
    const numbers = [(await taken(made)).number];
    const refused = await made.casebook.cases.takeIn(change(made), intake([lotItem({ count: null })]));
    expect(refused).toMatchObject({ ok: false, error: { code: 'invalid-input', fields: { 'parcels.0.items.0.count': expect.any(String) as string } } });
    const unknown = await made.casebook.cases.takeIn(change(made), intake(undefined, { client: { existing: 'nobody' } }));
    expect(unknown).toMatchObject({ ok: false, error: { code: 'not-found' } });
    for (let i = 0; i < 16; i++) numbers.push((await taken(made)).number);
    const of = (year: number) => numbers.filter((n) => n.startsWith(`C-${year}-`));
    expect(of(2026).length).toBeGreaterThan(1);
    expect(of(2027).length).toBeGreaterThan(1);
    for (const year of [2026, 2027]) expect(of(year)).toEqual(of(year).map((_n, i) => `C-${year}-${String(i + 1).padStart(4, '0')}`));
    made.casebook.close();
  });
  test('a fault halfway leaves no trace: no case, no client, no ledger entry', async () => {
    const made = await madeCasebook();
    const before = await made.casebook.audit.list({ caseId: null, limit: 1000, offset: 0 });
    const broken = intake([looseItem(), looseItem({ declared: 'a\uD800' })]);
    await expect(made.casebook.cases.takeIn(change(made), broken)).rejects.toThrow(/surrogate/);
    expect(await made.casebook.audit.list({ caseId: null, limit: 1000, offset: 0 })).toEqual(before);
    expect((await made.casebook.cases.list({ text: '', state: 'all', limit: 10, offset: 0 })).total).toBe(0);
    expect(await made.casebook.clients.search('')).toEqual([]);
    expect((await taken(made)).number).toBe('C-2026-0001');
    made.casebook.close();
  });
  test('a client who came before is found, not made again', async () => {
    const made = await madeCasebook();
    const first = await taken(made);
    const second = await taken(made, undefined, { client: { existing: first.client.id } });
    expect(second.client).toMatchObject({ id: first.client.id, cases: 2 });
    made.casebook.close();
  });
});

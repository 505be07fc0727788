import { describe, expect, test } from 'vitest';
import type { CustodyRequest } from '../../../../app/custody/next-custody.ts';
import { writePng } from '../../../../main/demonstration/write-png.ts';
import { intake, looseItem, madeCasebook, ringItem } from '../made-casebook.ts';

const PNG = writePng({ width: 2, height: 1, rgb: new Uint8Array(6) }, 'made for a test');

async function atTheBench() {
  const made = await madeCasebook();
  const change = (operation: string) => ({ at: made.deps.now().toISOString(), personId: made.personId, operation });
  const taken = await made.casebook.cases.takeIn(change('cases.takeIn'), intake([looseItem(), ringItem()]));
  if (!taken.ok) throw new Error('not taken in');
  const view = (await made.casebook.cases.get(taken.value.caseId))!;
  const [loose, ring] = view.parcels[0]!.items;
  return {
    ...made, caseId: view.id, loose: loose!.id, ring: ring!.id, change,
    append: (itemId: string, request: CustodyRequest & Pick<Parameters<typeof made.casebook.custody.append>[1], 'photographs'>) => made.casebook.custody.append(change('custody.append'), { itemId, ...request }),
  };
}

describe('custody', () => {
  test('weights are compared with the house’s tolerance in the item’s unit', async () => {
    const { casebook, append, loose, ring } = await atTheBench();
    expect(await append(loose, { event: 'weighed', weight: 10_254 })).toMatchObject({ value: { content: { expectedWeight: 10_234, tolerance: 20, differs: false, weightUnit: 'ct' } } });
    expect(await append(loose, { event: 'weighed', weight: 10_275 })).toMatchObject({ value: { content: { expectedWeight: 10_254, differs: true } } });
    expect(await append(ring, { event: 'weighed', weight: 512_345 + 1000 })).toMatchObject({ value: { content: { tolerance: 1000, differs: false, weightUnit: 'g' } } });
    expect((await casebook.bench.today('2026-03-02T10:00:00.000Z', null)).house).toMatchObject({ weightsCompared: 3, weightsAgree: 2 });
    casebook.close();
  });
  test('the case closes when its last item went back, and then nothing more is recorded', async () => {
    const { casebook, append, loose, ring, caseId, change } = await atTheBench();
    await append(loose, { event: 'returned', weight: 10_234 });
    expect((await casebook.cases.get(caseId))!.state).toBe('open');
    await append(ring, { event: 'returned' });
    expect((await casebook.cases.get(caseId))!.state).toBe('returned');
    expect(await append(loose, { event: 'moved', place: 'safe' })).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect(await casebook.stones.add(change('stones.add'), { itemId: ring, mounted: true, position: 'shoulder', shape: '', measurements: '', colourClass: 'unknown', weight: null })).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect((await casebook.bench.today('2026-03-02T10:00:00.000Z', null)).house).toMatchObject({ itemsInCustody: 0, itemsOut: 0 });
    casebook.close();
  });
  test('what is missing is named beside its field; an unknown item is not found', async () => {
    const { casebook, append, loose } = await atTheBench();
    expect(await append(loose, { event: 'sealed' })).toMatchObject({ ok: false, error: { code: 'invalid-input', fields: { seal: expect.any(String) as string } } });
    expect(await append('nowhere', { event: 'moved', place: 'x' })).toMatchObject({ ok: false, error: { code: 'not-found' } });
    casebook.close();
  });
  test('every entry is vouched for in the audit ledger', async () => {
    const { casebook, append, loose } = await atTheBench();
    const entry = await append(loose, { event: 'moved', place: 'bench 1' });
    const [audit] = (await casebook.audit.list({ caseId: null, limit: 1, offset: 0 })).rows;
    expect(entry.ok && JSON.parse(audit!.content)).toMatchObject({ custody: { seq: entry.ok ? entry.value.seq : 0, hash: entry.ok ? entry.value.hash : '' } });
    casebook.close();
  });
  test('several items are handed over by one entry each, or not at all', async () => {
    const { casebook, append, loose, ring, change } = await atTheBench();
    const out = { event: 'handed-over', to: 'Courier', outside: true, dueBack: '2026-03-04', purpose: 'setting' } as const;
    await append(ring, { event: 'returned' });
    expect(await casebook.custody.appendMany(change('custody.appendMany'), { itemIds: [loose, ring], ...out })).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect((await casebook.custody.whereabouts('2026-03-03T10:00:00.000Z')).rows).toMatchObject([{ itemId: loose, out: null }]);
    const given = await casebook.custody.appendMany(change('custody.appendMany'), { itemIds: [loose, loose], ...out });
    expect(given.ok && given.value.map((entry) => entry.itemId)).toEqual([loose]);
    casebook.close();
  });
  test('what is out is known by hand and day, is overdue after the day, and the bench counts it', async () => {
    const { casebook, append, loose } = await atTheBench();
    await append(loose, { event: 'handed-over', to: 'Courier', outside: true, dueBack: '2026-03-04' });
    const [onTheDay] = (await casebook.custody.whereabouts('2026-03-04T10:00:00.000Z')).rows;
    expect(onTheDay).toMatchObject({ place: '', holder: 'Courier', out: { to: 'Courier', dueBack: '2026-03-04', overdue: false } });
    expect((await casebook.custody.whereabouts('2026-03-05T10:00:00.000Z')).rows[0]!.out!.overdue).toBe(true);
    expect((await casebook.bench.today('2026-03-05T10:00:00.000Z', null)).house).toMatchObject({ itemsInCustody: 2, itemsOut: 1, itemsOverdue: 1 });
    await append(loose, { event: 'taken-back', place: 'safe 2' });
    expect((await casebook.bench.today('2026-03-05T10:00:00.000Z', null)).house).toMatchObject({ itemsOut: 0, itemsOverdue: 0 });
    casebook.close();
  });
  test('a photograph of the sealed bag is kept with the entry that names its digest; a damaged one stops the entry', async () => {
    const { casebook, append, loose, caseId } = await atTheBench();
    const picture = { name: 'bag.png', mediaType: 'image/png', bytes: PNG, caption: 'the bag', light: 'white' } as const;
    const sealed = await append(loose, { event: 'sealed', seal: 'S-9', photographs: [picture] });
    const photographs = (await casebook.cases.get(caseId))!.parcels[0]!.items[0]!.photographs;
    expect(sealed.ok && sealed.value.content.photographs).toEqual([photographs.find((one) => one.caption === 'the bag')!.sha256]);
    const before = (await casebook.custody.list({ caseId, itemId: loose, limit: 100, offset: 0 })).total;
    expect(await append(loose, { event: 'opened', photographs: [{ ...picture, bytes: PNG.slice(0, 20) }] })).toMatchObject({ ok: false, error: { fields: { photographs: expect.any(String) as string } } });
    expect((await casebook.custody.list({ caseId, itemId: loose, limit: 100, offset: 0 })).total).toBe(before);
    expect((await casebook.ledgers.verify({ at: 'now' }))!.parts.filter((part) => !part.sound)).toEqual([]);
    casebook.close();
  });
});

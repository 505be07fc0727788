import { describe, expect, test } from 'vitest';
import type { CustodyRequest } from '../../../../app/custody/next-custody.ts';
import { intake, looseItem, madeCasebook, ringItem } from '../made-casebook.ts';

async function atTheBench() {
  const made = await madeCasebook();
  const change = (operation: string) => ({ at: made.deps.now().toISOString(), personId: made.personId, operation });
  const taken = await made.casebook.cases.takeIn(change('cases.takeIn'), intake([looseItem(), ringItem()]));
  if (!taken.ok) throw new Error('not taken in');
  const view = (await made.casebook.cases.get(taken.value.caseId))!;
  const [loose, ring] = view.parcels[0]!.items;
  return {
    ...made, caseId: view.id, loose: loose!.id, ring: ring!.id, change,
    append: (itemId: string, request: CustodyRequest) => made.casebook.custody.append(change('custody.append'), { itemId, ...request }),
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
});

import { describe, expect, test } from 'vitest';
import { contract, type OperationName } from '../../../../app/contract/index.ts';
import { casebookContract } from '../../../../app/contract/casebook.ts';
import { peopleContract } from '../../../../app/contract/people.ts';
import { casesContract } from '../../../../app/contract/cases.ts';
import { custodyContract } from '../../../../app/contract/custody.ts';
import { createKeyring } from '../../../../main/keys/keyring.ts';
import { createSessionGuard } from '../../../../main/people/session-guard.ts';
import { verifyOnThisThread } from '../../../../main/verify/verify-with-helpers.ts';
import type { Call, Session } from '../../../../main/services/service.ts';
import { createIntakeServices } from '../../../../main/services/intake-services.ts';
import { intake, looseItem, ringItem } from '../../db/made-casebook.ts';
import { madeManager } from '../casebook/made-manager.ts';
import { writePng } from '../../../../main/demonstration/write-png.ts';

const PNG = writePng({ width: 2, height: 1, rgb: new Uint8Array(6) }, 'made for a test');
const LAB = { name: 'Invented Laboratory', address: 'Nowhere 1', zone: 'Europe/Berlin', logo: null, person: { name: 'Ada Invented', initials: 'AI', roles: ['manager' as const], password: 'several invented words' } };

/** Calls services as the door does: input parsed by the contract, output held against it. */
function atTheDoor() {
  const { manager, options } = madeManager();
  const keyring = createKeyring(() => manager.current());
  const guard = createSessionGuard({ manager, keyring, now: options.now });
  const services = createIntakeServices({ manager, keyring, guard, verify: verifyOnThisThread, now: options.now, newId: options.newId, host: { version: '0.1.0', host: 'loopback', hostNote: '' } });
  const session: Session = { personId: null };
  const call: Call = { session, signal: new AbortController().signal, emit() {} };
  type Service = (input: unknown, call: Call) => Promise<{ ok: boolean; value?: unknown; error?: { code: string; fields?: Record<string, string> } }>;
  const ask = async (name: OperationName & keyof typeof services, input: unknown = {}) => {
    const answer = await (services[name] as unknown as Service)(contract[name].input.parse(input), call);
    if (answer.ok) expect(() => contract[name].output.parse(answer.value), name).not.toThrow();
    return answer;
  };
  const value = async <T>(name: OperationName & keyof typeof services, input: unknown = {}): Promise<T> => {
    const answer = await ask(name, input);
    if (!answer.ok) throw new Error(`${name}: ${JSON.stringify(answer.error)}`);
    return answer.value as T;
  };
  return { manager, services, session, ask, value };
}

test('every operation of the casebook and of intake is there, but for printing', () => {
  const named = [...Object.keys(casebookContract), ...Object.keys(casesContract), ...Object.keys(custodyContract), ...Object.keys(peopleContract)].filter((name) => !name.startsWith('print.'));
  expect(Object.keys(atTheDoor().services).sort()).toEqual(named.sort());
});

describe('at the door', () => {
  test('the status tells the three states', async () => {
    const { value, manager, session } = atTheDoor();
    expect(await value('casebook.status')).toMatchObject({ state: 'none', laboratory: null, people: [], me: null, trouble: null });
    await value('casebook.create', LAB);
    expect(await value('casebook.status')).toMatchObject({ state: 'open', laboratory: { name: 'Invented Laboratory', isDemonstration: false }, me: { name: 'Ada Invented' } });
    await value('casebook.openDemonstration');
    expect(session.personId).toBeNull();
    expect(await value('casebook.status')).toMatchObject({ state: 'open', laboratory: { isDemonstration: true }, me: null });
    manager.close();
  });
  test('a zone or a logo that is none is told beside the field', async () => {
    const { ask } = atTheDoor();
    expect(await ask('casebook.create', { ...LAB, zone: 'Europe/Atlantis' })).toMatchObject({ error: { code: 'invalid-input', fields: { zone: expect.any(String) as string } } });
    expect(await ask('casebook.create', { ...LAB, logo: { mediaType: 'image/png', bytes: new Uint8Array(9) } })).toMatchObject({ error: { fields: { logo: expect.any(String) as string } } });
  });
  test('without a casebook, and without a person, nothing is done', async () => {
    const { ask, value, session, manager } = atTheDoor();
    expect(await ask('bench.today')).toMatchObject({ error: { code: 'no-casebook' } });
    await value('casebook.create', LAB);
    session.personId = 'nobody';
    expect(await ask('cases.takeIn', intake())).toMatchObject({ error: { code: 'not-allowed' } });
    manager.close();
  });
  test('a day’s work from hand-over to return', async () => {
    const { value, ask, manager } = atTheDoor();
    await value('casebook.create', LAB);
    const { caseId } = await value<{ caseId: string }>('cases.takeIn', intake([looseItem(), ringItem()]));
    const view = await value<{ parcels: { items: { id: string; stones: { id: string }[] }[] }[] }>('cases.get', { caseId });
    const [loose, ring] = view.parcels[0]!.items;
    await value('photographs.add', { caseId, itemId: null, stoneId: ring!.stones[0]!.id, name: 'a.png', mediaType: 'image/png', bytes: PNG, caption: 'centre', light: 'long-wave' });
    expect(await ask('photographs.add', { caseId, itemId: loose!.id, stoneId: ring!.stones[0]!.id, name: 'a.png', mediaType: 'image/png', bytes: PNG, caption: '', light: 'white' })).toMatchObject({ error: { code: 'refused' } });
    await value('custody.append', { itemId: loose!.id, event: 'moved', place: 'bench 1' });
    await value('stones.amend', { stoneId: loose!.stones[0]!.id, position: '', shape: 'oval', measurements: '6.1 x 5.0', colourClass: 'brown', weight: 10_200 });
    expect(await ask('stones.add', { itemId: loose!.id, mounted: false, position: '', shape: '', measurements: '', colourClass: 'unknown', weight: null })).toMatchObject({ error: { code: 'invalid-input' } });
    await value('stones.add', { itemId: ring!.id, mounted: true, position: 'shoulder', shape: '', measurements: '', colourClass: 'unknown', weight: null });
    await value('cases.amend', { caseId, asks: 'both', dueOn: '2026-04-01', remarks: '' });
    expect(await ask('cases.amend', { caseId, asks: 'both', dueOn: '2026-02-30', remarks: '' })).toMatchObject({ error: { fields: { dueOn: expect.any(String) as string } } });
    await value('drafts.put', { key: 'intake', content: { half: 'filled' } });
    await value('drafts.get', { key: 'intake' });
    await value('clients.search', { text: 'invented' });
    expect(await value('bench.today')).toMatchObject({ counts: { cases: 1, stones: 5 }, drafts: [{ key: 'intake' }] });
    for (const item of [loose, ring]) await value('custody.append', { itemId: item!.id, event: 'returned' });
    expect(await ask('photographs.add', { caseId, itemId: loose!.id, stoneId: null, name: 'a.png', mediaType: 'image/png', bytes: PNG, caption: '', light: 'white' })).toMatchObject({ error: { code: 'refused' } });
    expect(await value('cases.list', { state: 'returned' })).toMatchObject({ total: 1, rows: [{ next: 'returned', place: '' }] });
    for (const name of ['custody.list', 'audit.list'] as const) await value(name, { caseId, ...(name === 'custody.list' && { itemId: null }) });
    await value('stones.list');
    await value('find.anything', { text: 'oval' });
    await value('people.list');
    await value('drafts.remove', { key: 'intake' });
    expect(await value('ledgers.verify')).toMatchObject({ sound: true, parts: expect.arrayContaining([expect.objectContaining({ part: 'raw records', checked: 1 })]) as unknown[] });
    manager.close();
  });
  test('only a manager restores over a casebook that works', async () => {
    const { value, ask, manager, session } = atTheDoor();
    await value('casebook.create', LAB);
    const { file } = await value<{ file: string }>('casebook.backup');
    const ben = await value<{ id: string; code: string }>('people.save', { id: null, name: 'Ben Invented', initials: 'BI', roles: ['examiner'], active: true });
    await value('people.choosePassword', { personId: ben.id, code: ben.code, password: 'other invented words' });
    expect(await ask('casebook.restore', { file })).toMatchObject({ error: { code: 'not-allowed' } });
    session.personId = (await value<{ id: string; name: string }[]>('people.list')).find((p) => p.name.startsWith('Ada'))!.id;
    await value('casebook.restore', { file });
    expect(session.personId).toBeNull();
    manager.close();
  });
});

test('a list that was being made when the casebook was closed ends in words, not in a fault', async () => {
  const { manager, ask, value } = atTheDoor();
  await value('casebook.create', LAB);
  await value('cases.takeIn', intake());
  const asked = ask('stones.list');
  manager.close();
  expect(await asked).toMatchObject({ ok: false, error: { code: 'no-casebook' } });
});

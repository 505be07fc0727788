import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, test } from 'vitest';
import { verifySignature } from '../../../../app/signature/verify-signature.ts';
import { closingWords } from '../../../../app/domain/key-closing.ts';
import type { Session } from '../../../../main/services/service.ts';
import { fakeStore } from '../keys/fake-store.ts';
import { ADA, begun, program, type Program, type ProgramOptions } from './made-program.ts';

const MESSAGE = new TextEncoder().encode('what is signed');
/** Each sign-in stretches a password, which takes seconds on a loaded machine. */
const SLOW_MS = 240_000;
const AT = { at: '2026-11-25T09:00:00.000Z' };

const open: Program[] = [];
afterEach(() => { for (const one of open.splice(0)) one.manager.close(); });

async function start(options: ProgramOptions) {
  const made = await begun(options);
  open.push(made);
  return made;
}

/** The same casebook in the program anew: on the same machine, or on one with another key store, or none. */
async function again(before: Pick<Program, 'manager' | 'dataFolder' | 'clock'>, store?: ProgramOptions['store']): Promise<Program & { session: Session }> {
  before.manager.close();
  const made = program({ dataFolder: before.dataFolder, clock: before.clock, ...(store !== undefined && { store }) });
  open.push(made);
  await made.manager.openAtStart();
  return { ...made, session: { personId: null } };
}

const closing = async (made: Program, session: Session) => (await made.value(session, 'keys.list', {})).closing;
const copies = async ({ manager }: Program) => {
  const key = (await manager.current()!.keys.current())!;
  return Object.fromEntries((await manager.current()!.keys.wraps(key.id)).map((wrap) => [wrap.id.endsWith('recovery') ? 'sheet' : 'person', wrap.store]));
};
const newest = async ({ manager }: Program, operation: string) => (await manager.current()!.audit.list({ caseId: null, limit: 30, offset: 0 })).rows.find((row) => row.operation === operation);
const sound = async ({ manager }: Program) => (await manager.current()!.ledgers.verify(AT))!.parts.filter((part) => !part.sound);
async function signs({ keyring }: Program): Promise<boolean> {
  const signed = await keyring.sign(MESSAGE);
  return signed.ok && verifySignature(signed.value.publicKey, MESSAGE, signed.value.signature);
}

describe('a new casebook where a key store is offered', () => {
  test('closes the key with it from the start, and opens it at the next sign-in without a word', async () => {
    const store = fakeStore();
    const made = await start({ store });
    expect(await copies(made)).toEqual({ person: 'libsecret', sheet: null });
    expect(await closing(made, made.ada)).toEqual({ offered: 'libsecret', why: '', wanted: true, closedBy: 'store', store: 'libsecret', opensHere: true, sheet: true });
    const next = await again(made, store);
    expect(await signs(next)).toBe(false);
    expect(await next.value(next.session, 'people.signIn', { personId: made.adaId, password: ADA })).toEqual({ state: 'signed-in', note: null });
    expect(await signs(next)).toBe(true);
    expect(await sound(next)).toEqual([]);
  }, SLOW_MS);
});

describe('the casebook on another machine', () => {
  test('the password signs in, and does not open the key; the recovery sheet does, once, and from then on the password', async () => {
    const made = await start({ store: fakeStore('dpapi') });
    const here = fakeStore('keychain');
    const moved = await again(made, here);
    const { session } = moved;
    const { state, note } = await moved.value(session, 'people.signIn', { personId: made.adaId, password: ADA });
    expect({ state, note }).toMatchObject({ state: 'signed-in', note: { trouble: true, message: expect.stringContaining('(DPAPI) of another computer') as string, next: expect.stringContaining('recovery sheet') as string } });
    expect(await moved.keyring.sign(MESSAGE)).toMatchObject({ ok: false, error: { code: 'locked', next: expect.stringContaining('House → The laboratory’s key') as string } });
    const told = await closing(moved, session);
    expect(told).toMatchObject({ offered: 'keychain', closedBy: 'store', store: 'dpapi', opensHere: false, sheet: true });
    expect(closingWords(told).more).toContain('let a manager open it here with the recovery sheet');
    expect(await moved.ask(session, 'keys.useStore', { used: false, reason: 'moved' })).toMatchObject({ ok: false, error: { code: 'locked', next: expect.stringContaining('recovery sheet') as string } });

    expect(await moved.ask(session, 'keys.openWithSheet', { recovery: '0000-0000-0000-0000-0000-0000' })).toMatchObject({ ok: false, error: { fields: { recovery: expect.any(String) as string } } });
    expect(await signs(moved)).toBe(false);
    const { recovery } = await moved.value(session, 'keys.openWithSheet', { recovery: made.recovery });
    expect(recovery).not.toBe(made.recovery);
    expect(await signs(moved)).toBe(true);
    expect(await copies(moved)).toEqual({ person: 'keychain', sheet: null });
    expect((await newest(moved, 'keys.openWithSheet'))?.content).toContain('recovery sheet, which was replaced');
    expect(await moved.ask(session, 'keys.openWithSheet', { recovery })).toMatchObject({ ok: false, error: { code: 'conflict' } });

    const later = await again(moved, here);
    expect(await later.value(later.session, 'people.signIn', { personId: made.adaId, password: ADA })).toEqual({ state: 'signed-in', note: null });
    expect(await signs(later)).toBe(true);
    expect(await sound(later)).toEqual([]);
    // The sheet of before is used up.
    later.keyring.forget();
    here.loseKey();
    expect(await later.ask(later.session, 'keys.openWithSheet', { recovery: made.recovery })).toMatchObject({ ok: false });
    expect(await later.ask(later.session, 'keys.openWithSheet', { recovery })).toMatchObject({ ok: true });
  }, SLOW_MS);

  test('without a key store the sheet leaves it to the passwords; a manager who lost the password comes in the same way', async () => {
    const store = fakeStore();
    const made = await start({ store });
    const bare = await again(made);
    expect(await bare.value(bare.session, 'people.signIn', { personId: made.adaId, password: ADA })).toMatchObject({ note: { trouble: true, message: expect.stringContaining('can’t be used here: this is a test.') as string } });
    // Signing in where the store can't be reached changes nothing of what it holds.
    expect(await copies(bare)).toEqual({ person: 'libsecret', sheet: null });
    const { recovery } = await bare.value({ personId: null }, 'people.recover', { personId: made.adaId, recovery: made.recovery, password: 'new invented words' });
    expect(await copies(bare)).toEqual({ person: null, sheet: null });
    const later = await again(bare);
    expect(await later.value(later.session, 'people.signIn', { personId: made.adaId, password: 'new invented words' })).toEqual({ state: 'signed-in', note: null });
    expect(await signs(later)).toBe(true);
    expect(closingWords(await closing(later, later.session)).state).toBe('The private part is kept by the passwords only: this is a test.');
    // Back where there is a store, it takes over at the sign-in, and says so.
    const home = await again(later, store);
    expect(await home.value(home.session, 'people.signIn', { personId: made.adaId, password: 'new invented words' })).toMatchObject({ note: { trouble: false, message: expect.stringContaining('(libsecret) from now on') as string, next: expect.stringContaining('recovery sheet') as string } });
    expect(await copies(home)).toEqual({ person: 'libsecret', sheet: null });
    expect(recovery).not.toBe(made.recovery);
  }, SLOW_MS);
});

describe('a casebook that the passwords alone kept', () => {
  test('is closed with the store at the next sign-in, which the audit ledger says; nothing of the bare copy is left in the file', async () => {
    const made = await start({});
    const key = (await made.manager.current()!.keys.current())!;
    const bare = (await made.manager.current()!.keys.wraps(key.id)).find((wrap) => !wrap.id.endsWith('recovery'))!.sealed;
    const store = fakeStore();
    const next = await again(made, store);
    const file = next.manager.file();
    expect(await closing(next, { personId: made.adaId, activeAt: Number.MAX_SAFE_INTEGER })).toMatchObject({ offered: 'libsecret', closedBy: 'password', sheet: true });
    await next.value(next.session, 'people.signIn', { personId: made.adaId, password: ADA });
    expect(await copies(next)).toEqual({ person: 'libsecret', sheet: null });
    expect(JSON.parse((await newest(next, 'keys.share'))!.content)).toMatchObject({ inKeyStore: [`${key.id}/${made.adaId}`] });
    expect(await sound(next)).toEqual([]);
    next.manager.close();
    expect(readFileSync(file).includes(Buffer.from(bare))).toBe(false);
    // As it would have been: the copy of the sheet is there.
    const later = await again(next, store);
    const sheet = (await later.manager.current()!.keys.wraps(key.id)).find((wrap) => wrap.id.endsWith('recovery'))!.sealed;
    later.manager.close();
    expect(readFileSync(file).includes(Buffer.from(sheet))).toBe(true);
  }, SLOW_MS);

  test('stays as it is where there is no recovery sheet', async () => {
    const made = await start({});
    made.manager.current()!.handle.transactNow((tx) => {
      tx.run(`UPDATE credential SET id = 'gone', kind = 'code' WHERE id = 'recovery'`);
      tx.run(`INSERT INTO person SELECT 'gone', 'Old Sheet', 'OS', '[]', 0, 'at' FROM person LIMIT 1`);
      tx.written.forget();
    });
    const next = await again(made, fakeStore());
    await next.value(next.session, 'people.signIn', { personId: made.adaId, password: ADA });
    expect(await copies(next)).toEqual({ person: null, sheet: null });
    expect(closingWords(await closing(next, next.session)).state).toContain('no recovery sheet');
    expect(await next.ask(next.session, 'keys.useStore', { used: true, reason: 'safer' })).toMatchObject({ ok: false, error: { code: 'refused', next: expect.stringContaining('Make a new recovery sheet') as string } });
    await next.value(next.session, 'people.newRecovery', {});
    expect(await signs(next)).toBe(true);
  }, SLOW_MS);
});

describe('a manager decides', () => {
  test('against it and for it again, with a reason; it holds through sign-ins, and only a manager may', async () => {
    const store = fakeStore();
    const made = await start({ store });
    expect(await made.ask(made.ada, 'keys.useStore', { used: false, reason: ' ' })).toMatchObject({ ok: false, error: { fields: { reason: 'Write why this is decided.' } } });
    await made.value(made.ada, 'keys.useStore', { used: false, reason: 'two computers sign' });
    expect(await copies(made)).toEqual({ person: null, sheet: null });
    expect(await newest(made, 'keys.useStore')).toMatchObject({ person: 'Ada Invented', content: expect.stringContaining('two computers sign') as string });
    expect(await made.ask(made.ada, 'keys.useStore', { used: false, reason: 'again' })).toMatchObject({ ok: false, error: { code: 'conflict' } });
    const next = await again(made, store);
    await next.value(next.session, 'people.signIn', { personId: made.adaId, password: ADA });
    expect(await copies(next)).toEqual({ person: null, sheet: null });
    expect(closingWords(await closing(next, next.session)).state).toContain('a manager decided');
    store.takes = false;
    expect(await next.ask(next.session, 'keys.useStore', { used: true, reason: 'one again' })).toMatchObject({ ok: false, error: { code: 'refused', message: expect.stringContaining('did not take the key') as string } });
    expect(await closing(next, next.session)).toMatchObject({ wanted: false, closedBy: 'password' });
    store.available = false;
    expect(await next.ask(next.session, 'keys.useStore', { used: true, reason: 'one again' })).toMatchObject({ ok: false, error: { code: 'refused', message: expect.stringContaining('no key store') as string } });
    store.available = true;
    store.takes = true;
    await next.value(next.session, 'keys.renew', { reason: 'to have an older one' });
    await next.value(next.session, 'keys.useStore', { used: true, reason: 'one again' });
    expect(await copies(next)).toEqual({ person: 'libsecret', sheet: null });
    // The key that no longer signs is closed as well.
    const key = (await next.manager.current()!.keys.current())!;
    expect((await next.manager.current()!.keys.wrapsOfOthers(key.id)).map((wrap) => wrap.store).sort()).toEqual(['libsecret', null]);
    expect(await sound(next)).toEqual([]);
    expect(next.manager.current()!.handle.read.all('SELECT used, reason FROM key_store_choice ORDER BY rowid')).toEqual([{ used: 0, reason: 'two computers sign' }, { used: 1, reason: 'one again' }]);
    next.keyring.forget();
    expect(await next.ask(next.session, 'keys.useStore', { used: false, reason: 'while locked' })).toMatchObject({ ok: false, error: { code: 'locked', next: expect.stringContaining('Sign in again') as string } });
  }, SLOW_MS);

  test('nothing about the demonstration’s key', async () => {
    const made = program({ store: fakeStore() });
    open.push(made);
    const eve: Session = { personId: null };
    await made.value(eve, 'casebook.openDemonstration', {});
    const [person] = (await made.value(eve, 'casebook.status', {})).people;
    await made.value(eve, 'people.actAs', { personId: person!.id });
    expect(await made.ask(eve, 'keys.useStore', { used: true, reason: 'tried' })).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect(await made.ask(eve, 'keys.openWithSheet', { recovery: 'none' })).toMatchObject({ ok: false, error: { code: 'refused' } });
  }, SLOW_MS);
});

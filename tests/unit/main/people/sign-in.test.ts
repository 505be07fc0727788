import BetterSqlite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { contract, type OperationName } from '../../../../app/contract/index.ts';
import { ROLES, type Role } from '../../../../app/domain/role.ts';
import { verifySignature } from '../../../../app/signature/verify-signature.ts';
import type { Session } from '../../../../main/services/service.ts';
import { begun, ADA, type Program, program } from './made-program.ts';

const BEN = 'other invented words';
const MESSAGE = new TextEncoder().encode('what is signed');

const operations = async ({ manager }: Program) => (await manager.current()!.audit.list({ caseId: null, limit: 100, offset: 0 })).rows.map((row) => row.operation);

describe('signing in', () => {
  let made: Awaited<ReturnType<typeof begun>>;
  beforeAll(async () => { made = await begun(); });
  afterAll(() => { made.manager.close(); });

  test('whoever starts the casebook is signed in, and the key signs', async () => {
    const signed = await made.keyring.sign(MESSAGE);
    expect(signed.ok && verifySignature(signed.value.publicKey, MESSAGE, signed.value.signature)).toBe(true);
    expect(await made.value(made.ada, 'casebook.status', {})).toMatchObject({ me: { name: 'Ada Invented' }, locked: false, people: [{ opensWith: 'password' }] });
  });

  test('a name alone, a wrong password and a name that is not there are refused alike, and written down', async () => {
    const session: Session = { personId: null };
    expect(await made.ask(session, 'people.actAs', { personId: made.adaId })).toMatchObject({ ok: false, error: { code: 'refused' } });
    const wrong = await made.ask(session, 'people.signIn', { personId: made.adaId, password: BEN });
    const nobody = await made.ask(session, 'people.signIn', { personId: null, name: 'Nobody', password: BEN });
    expect(wrong).toEqual(nobody);
    expect(session.personId).toBeNull();
    expect((await operations(made)).slice(0, 2)).toEqual(['people.signIn', 'people.signIn']);
    const listed = await made.manager.current()!.audit.list({ caseId: null, limit: 2, offset: 0 });
    expect(listed.rows.map((row) => row.content)).toEqual([expect.stringContaining('nobody of that name'), expect.stringContaining('wrong password')]);
    expect(JSON.stringify(listed)).not.toContain(BEN);
  });

  test('the right one signs in, by a typed name too', async () => {
    const session: Session = { personId: null };
    expect(await made.value(session, 'people.signIn', { personId: null, name: ' ada invented ', password: ADA })).toEqual({ state: 'signed-in', note: null });
    expect(session.personId).toBe(made.adaId);
  });

  test('after two slips every wrong attempt makes the wait longer, attempts at the same time too', async () => {
    const session: Session = { personId: null };
    const tries = await Promise.all(Array.from({ length: 5 }, () => made.ask(session, 'people.signIn', { personId: made.adaId, password: BEN })));
    expect(tries.map((reply) => (reply.ok ? 'in' : reply.error.code))).toEqual(['refused', 'refused', 'refused', 'busy', expect.any(String)]);
    expect(await made.ask(session, 'people.signIn', { personId: made.adaId, password: ADA })).toMatchObject({ ok: false, error: { code: 'busy', next: expect.stringMatching(/seconds/) as string } });
    made.clock.forward(10_000);
    expect(await made.ask(session, 'people.signIn', { personId: made.adaId, password: ADA })).toMatchObject({ ok: true });
  });

  test('a new person is there with a code, or not at all', async () => {
    const before = (await made.manager.current()!.people.list()).length;
    await made.manager.current()!.handle.transact((tx) => { tx.run(`CREATE TEMP TRIGGER no_room BEFORE INSERT ON credential BEGIN SELECT RAISE(ABORT, 'the disk is full'); END`); });
    expect(await made.ask(made.ada, 'people.save', { id: null, name: 'Cleo Invented', initials: 'CI', roles: ['intake'], active: true })).toMatchObject({ ok: false, error: { code: 'internal' } });
    await made.manager.current()!.handle.transact((tx) => { tx.run('DROP TRIGGER no_room'); });
    expect((await made.manager.current()!.people.list()).length).toBe(before);
  });

  test('a new person has a code that is good once and must be replaced; then may sign', async () => {
    const { id, code } = await made.value(made.ada, 'people.save', { id: null, name: 'Ben Invented', initials: 'BI', roles: ['appraiser'], active: true });
    const ben: Session = { personId: null };
    expect(await made.value(ben, 'people.signIn', { personId: id, password: code!.toLowerCase() })).toEqual({ state: 'choose', note: null });
    expect(ben.personId).toBeNull();
    expect(await made.ask(ben, 'people.choosePassword', { personId: id, code: code!, password: 'short' })).toMatchObject({ ok: false, error: { fields: { password: expect.any(String) as string } } });
    expect(await made.ask(ben, 'people.choosePassword', { personId: id, code: '0000-0000-0000', password: BEN })).toMatchObject({ ok: false, error: { code: 'refused' } });
    await made.value(ben, 'people.choosePassword', { personId: id, code: code!, password: BEN });
    expect(ben.personId).toBe(id);
    made.keyring.release(made.ada);
    expect(await made.keyring.sign(MESSAGE)).toMatchObject({ ok: true });
    expect(await made.ask(ben, 'people.choosePassword', { personId: id, code: code!, password: ADA })).toMatchObject({ ok: false, error: { code: 'refused' } });
  });

  test('a manager gives a new code to who lost the password, and the ledger says why', async () => {
    await made.value(made.ada, 'people.signIn', { personId: made.adaId, password: ADA });
    const ben = (await made.value(made.ada, 'people.list', {})).find((one) => one.name === 'Ben Invented')!;
    const { code } = await made.value(made.ada, 'people.giveCode', { personId: ben.id, why: 'forgotten over the holidays' });
    const session: Session = { personId: null };
    expect(await made.ask(session, 'people.signIn', { personId: ben.id, password: BEN })).toMatchObject({ ok: false });
    await made.value(session, 'people.choosePassword', { personId: ben.id, code, password: BEN });
    const { rows } = await made.manager.current()!.audit.list({ caseId: null, limit: 20, offset: 0 });
    expect(rows.find((row) => row.operation === 'people.giveCode')).toMatchObject({ person: 'Ada Invented', content: expect.stringContaining('forgotten over the holidays') as string });
    expect(await made.ask(made.ada, 'people.giveCode', { personId: made.adaId, why: 'mine' })).toMatchObject({ ok: false, error: { code: 'refused' } });
  });

  test('a password is changed with the old one', async () => {
    const session: Session = { personId: null };
    await made.value(session, 'people.signIn', { personId: null, name: 'Ben Invented', password: BEN });
    expect(await made.ask(session, 'people.changePassword', { old: ADA, password: 'third invented words' })).toMatchObject({ ok: false, error: { fields: { old: expect.any(String) as string } } });
    await made.value(session, 'people.changePassword', { old: BEN, password: 'third invented words' });
    expect(await made.ask({ personId: null }, 'people.signIn', { personId: session.personId, password: BEN })).toMatchObject({ ok: false });
    expect(await made.ask({ personId: null }, 'people.signIn', { personId: session.personId, password: 'third invented words' })).toMatchObject({ ok: true });
  });

  test('the recovery sheet brings a manager back in, with the key, and is used up', async () => {
    const session: Session = { personId: null };
    const again = 'fourth invented words';
    expect(await made.ask(session, 'people.recover', { personId: null, name: 'Ben Invented', recovery: made.recovery, password: again })).toMatchObject({ ok: false });
    const { recovery } = await made.value(session, 'people.recover', { personId: made.adaId, recovery: made.recovery, password: again });
    expect(recovery).not.toBe(made.recovery);
    expect(await made.keyring.sign(MESSAGE)).toMatchObject({ ok: true });
    expect(await made.ask({ personId: null }, 'people.recover', { personId: made.adaId, recovery: made.recovery, password: again })).toMatchObject({ ok: false });
    expect(await made.value({ personId: null }, 'people.signIn', { personId: made.adaId, password: again })).toEqual({ state: 'signed-in', note: null });
  });

  test('nothing of it breaks the ledgers, and no secret stands in the file', async () => {
    expect(await made.manager.current()!.ledgers.verify({ at: '2026-11-25T09:00:00.000Z' })).toMatchObject({ sound: true });
    const dump = JSON.stringify(made.manager.current()!.handle.read.all('SELECT content FROM audit_entry'));
    for (const secret of [ADA, BEN, made.recovery, made.recovery.replaceAll('-', '')]) expect(dump).not.toContain(secret);
  });
});

describe('the lock', () => {
  test('closes the window in main after the idle time, and lets go of the key', async () => {
    const { ask, value, ada, adaId, clock, keyring, manager } = await begun();
    clock.forward(9 * 60_000);
    await value(ada, 'people.stay', {});
    clock.forward(9 * 60_000);
    expect(await ask(ada, 'people.list', {})).toMatchObject({ ok: true });
    clock.forward(2 * 60_000);
    for (const name of ['people.list', 'bench.today', 'people.stay'] as const) expect(await ask(ada, name, {})).toMatchObject({ ok: false, error: { code: 'locked' } });
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: false, error: { code: 'locked' } });
    expect(await value(ada, 'casebook.status', {})).toMatchObject({ locked: true, me: { name: 'Ada Invented' } });
    expect(await ask(ada, 'people.signIn', { personId: adaId, password: BEN })).toMatchObject({ ok: false });
    await value(ada, 'people.signIn', { personId: adaId, password: ADA });
    expect(await ask(ada, 'people.list', {})).toMatchObject({ ok: true });
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: true });
    await value(ada, 'people.lock', {});
    expect(await ask(ada, 'people.list', {})).toMatchObject({ ok: false, error: { code: 'locked' } });
    expect(await ask(ada, 'casebook.restore', { file: 'any' })).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
    manager.close();
  });

  test('names are seen at the door only where the house lets them be', async () => {
    const { value, ada, manager } = await begun();
    const { laboratory } = await value(ada, 'casebook.status', {});
    const { name, address, zone, settings } = laboratory!;
    await value(ada, 'laboratory.save', { name, address, zone, logo: null, settings: { ...settings, showNames: false } });
    expect((await value({ personId: null }, 'casebook.status', {})).people).toEqual([]);
    expect((await value(ada, 'casebook.status', {})).people).toHaveLength(1);
    manager.close();
  });
});

describe('a casebook from before passwords', () => {
  test('its manager chooses the first password and brings the key, then everybody', async () => {
    const { manager, value, ask, keyring } = program();
    const made = await manager.create({ name: 'Invented Laboratory', address: '', zone: 'UTC', logo: null }, { name: 'Ada Invented', initials: 'AI', roles: ['manager'] });
    if (!made.ok) throw new Error(made.error.message);
    const book = manager.current()!;
    const cleo = await book.people.save({ at: '2026-03-02T09:00:00.000Z', personId: made.value.personId, operation: 'people.save' }, { id: null, name: 'Cleo Invented', initials: 'CI', roles: ['appraiser'], active: true });
    if (!cleo.ok) throw new Error(cleo.error.message);
    const session: Session = { personId: null };
    expect(await value(session, 'people.signIn', { personId: cleo.value.id, password: '' })).toEqual({ state: 'choose', note: null });
    expect(await ask(session, 'people.choosePassword', { personId: cleo.value.id, code: '', password: BEN })).toMatchObject({ ok: false, error: { code: 'refused' } });
    await value(session, 'people.choosePassword', { personId: made.value.personId, code: '', password: ADA });
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: true });
    const other: Session = { personId: null };
    await value(other, 'people.choosePassword', { personId: cleo.value.id, code: '', password: BEN });
    keyring.release(session);
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: true });
    manager.close();
  });
});

describe('tampering', () => {
  test.each([
    ['a closed copy', `UPDATE key_wrap SET sealed = CASE substr(sealed, 1, 1) WHEN '0' THEN '1' ELSE '0' END || substr(sealed, 2)`, 'closed copy'],
    ['a password', `UPDATE credential SET proof = CASE substr(proof, 1, 1) WHEN '0' THEN '1' ELSE '0' END || substr(proof, 2) WHERE kind = 'password'`, 'password of Ada Invented'],
    ['a public key', `DROP TRIGGER signing_key_no_update; UPDATE signing_key SET public_key = CASE substr(public_key, 1, 1) WHEN '0' THEN '1' ELSE '0' END || substr(public_key, 2)`, 'laboratory’s key'],
  ])('%s that was altered in the file does not serve, and is named', async (_what, sql, named) => {
    const { manager, ask, keyring, adaId } = await begun();
    const { file } = manager.current()!;
    manager.close();
    keyring.forget();
    const outside = new BetterSqlite(file);
    outside.exec(sql);
    outside.close();
    await manager.openAtStart();
    const session: Session = { personId: null };
    await ask(session, 'people.signIn', { personId: adaId, password: ADA });
    expect((await keyring.sign(MESSAGE)).ok).toBe(false);
    const verified = await manager.current()!.ledgers.verify({ at: '2026-11-25T09:00:00.000Z' });
    expect(verified!.sound).toBe(false);
    expect(JSON.stringify(verified!.parts)).toContain(named);
    manager.close();
  });
});

describe('roles', () => {
  const all = (Object.keys(contract) as OperationName[]).sort();

  test('who may do what', () => {
    expect(Object.fromEntries(all.map((name) => [name, contract[name].may]))).toMatchSnapshot();
  });

  test('is enforced in main, for every operation and every role', async () => {
    const { manager, ask, ada, value } = await begun();
    const sessions = new Map<Role, Session>();
    for (const role of ROLES) {
      const { id } = await value(ada, 'people.save', { id: null, name: `One ${role}`, initials: role.slice(0, 6), roles: [role], active: true });
      sessions.set(role, { personId: id, activeAt: Number.MAX_SAFE_INTEGER });
    }
    for (const name of all) {
      const { may } = contract[name];
      if (may === 'door') continue;
      expect(await ask({ personId: null }, name, {} as never), name).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
      for (const role of ROLES) {
        const allowed = may === 'anyone' || (may as readonly Role[]).includes(role);
        // An input that no schema takes: whoever is let past the roles is stopped there, and nothing happens.
        const reply = await ask(sessions.get(role)!, name, 'no input' as never);
        expect(reply, `${name} as ${role}`).toMatchObject({ ok: false, error: { code: allowed ? 'invalid-input' : 'not-allowed' } });
      }
      expect(await ask({ ...sessions.get('manager')!, locked: true }, name, {} as never), name).toMatchObject({ ok: false, error: { code: 'locked' } });
    }
    manager.close();
  });
});

import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import BetterSqlite from 'better-sqlite3';
import { afterAll, describe, expect, test } from 'vitest';
import { readCheckpointFile } from '../../../../app/signature/checkpoint-statement.ts';
import { keptCheckpoints } from '../../../../main/checkpoints/checkpoint-files.ts';
import { createCheckpoints, ENTRIES_BETWEEN } from '../../../../main/checkpoints/checkpoints.ts';
import { createKeyring } from '../../../../main/keys/keyring.ts';
import { makeOpenKey } from '../../../../main/keys/make-open-key.ts';
import { madeManager, movableClock } from '../casebook/made-manager.ts';

const elsewhere = mkdtempSync(path.join(tmpdir(), 'culet-checkpoints-'));
afterAll(() => { rmSync(elsewhere, { recursive: true }); });

/** A laboratory whose key lies open, so that these tests need no passwords. */
async function begun() {
  const clock = movableClock();
  const { manager, options } = madeManager(clock);
  const made = await manager.create({ name: 'Invented Laboratory', address: '', zone: 'UTC', logo: null }, { name: 'Ada Invented', initials: 'AI', roles: ['manager'] });
  if (!made.ok) throw new Error(made.error.message);
  const { personId } = made.value;
  const at = () => options.now().toISOString();
  await makeOpenKey(manager.current()!, { at: at(), personId, operation: 'keys.create' }, new Uint8Array(32).fill(6));
  const checkpoints = createCheckpoints({ manager, signer: createKeyring(() => manager.current()), now: options.now, newId: options.newId });
  return {
    manager, checkpoints, clock, personId,
    note: (n = 1) => Array.from({ length: n }).reduce<Promise<void>>((before) => before.then(() =>
      manager.current()!.audit.note({ at: at(), personId, operation: 'test.note' }, { subject: 'test', content: {} })), Promise.resolve()),
    verify: async () => (await manager.current()!.ledgers.verify({ at: at(), outside: manager.outside() }))!,
    faultOf: async () => (await manager.current()!.ledgers.verify({ at: at(), outside: manager.outside() }))!.parts.find((part) => part.part === 'checkpoints')!,
  };
}

/** Works on the closed file from outside, with the guards out of the way. */
function outside(file: string, sql: string): void {
  const sqlite = new BetterSqlite(file);
  for (const { name } of sqlite.prepare(`SELECT name FROM sqlite_master WHERE type = 'trigger'`).all() as { name: string }[]) sqlite.exec(`DROP TRIGGER ${name}`);
  sqlite.exec(sql);
  sqlite.close();
}

describe('checkpoints', () => {
  test('are signed over both heads, kept in the book and beside the backups, and fit', async () => {
    const { manager, checkpoints, personId, verify } = await begun();
    const made = await checkpoints.make('asked', personId);
    if (!made.ok) throw new Error(made.error.message);
    expect(readCheckpointFile(readFileSync(made.value.file, 'utf8'))).toMatchObject({ ok: true, value: { statement: made.value.statement } });
    expect(await manager.current()!.checkpoints.list(9)).toEqual([made.value.statement]);
    const verified = await verify();
    expect(verified.sound).toBe(true);
    expect(verified.parts.find((part) => part.part === 'checkpoints')).toMatchObject({ checked: 2, sound: true });
    manager.close();
  });

  test('are made after a report, after a day, after many entries and before closing, and not where nothing happened', async () => {
    const { manager, checkpoints, clock, note } = await begun();
    const why = async () => (await manager.current()!.checkpoints.list(1))[0]?.why;
    await note();
    await checkpoints.after('clients.save');
    expect(await why()).toBeUndefined();
    await checkpoints.after('reports.issue');
    expect(await why()).toBe('report');
    await checkpoints.beforeClosing();
    expect(await why()).toBe('report');
    clock.forward(24 * 3_600_000);
    await note();
    await checkpoints.after('clients.save');
    expect(await why()).toBe('day');
    await note(ENTRIES_BETWEEN);
    await checkpoints.after('clients.save');
    expect(await why()).toBe('entries');
    await note();
    await checkpoints.beforeClosing();
    expect(await why()).toBe('closing');
    manager.close();
  });

  test('an older copy in the place of the casebook is found by the file beside the backups', async () => {
    const { manager, checkpoints, note, faultOf } = await begun();
    const { file } = manager.current()!;
    manager.close();
    const old = path.join(elsewhere, 'old.culet');
    copyFileSync(file, old);
    await manager.openAtStart();
    await note(3);
    await checkpoints.make('asked', null);
    manager.close();
    copyFileSync(old, file);
    await manager.openAtStart();
    expect(await faultOf()).toMatchObject({ sound: false, fault: expect.stringMatching(/Entry \d+ of the audit ledger.*older copy/) as string });
    // Other work on the old copy does not hide it.
    await note(9);
    expect(await faultOf()).toMatchObject({ sound: false, fault: expect.stringContaining('written anew') as string });
    manager.close();
  });

  test('and, without any checkpoint, by what was noted at the last closing', async () => {
    const { manager, note, faultOf } = await begun();
    const { file } = manager.current()!;
    manager.close();
    const old = path.join(elsewhere, 'older.culet');
    copyFileSync(file, old);
    await manager.openAtStart();
    await note();
    await manager.noteHead();
    manager.close();
    await manager.openAtStart();
    expect(await faultOf()).toMatchObject({ sound: true });
    manager.close();
    copyFileSync(old, file);
    await manager.openAtStart();
    expect(await faultOf()).toMatchObject({ sound: false, fault: expect.stringContaining('closed here') as string });
    manager.close();
  });

  test('a backup that the program itself put back is no fault, and it is said', async () => {
    const { manager, checkpoints, note, personId, verify } = await begun();
    const kept = await manager.backup({ at: '2026-03-02T10:00:00.000Z', personId, operation: 'casebook.backup' });
    if (!kept.ok) throw new Error(kept.error.message);
    await note(4);
    await checkpoints.make('asked', personId);
    await manager.noteHead();
    const restored = await manager.restore(kept.value.file, personId);
    expect(restored).toMatchObject({ ok: true });
    const verified = await verify();
    expect(verified.parts.filter((part) => !part.sound)).toEqual([]);
    expect(verified.parts.find((part) => part.part === 'checkpoints')?.note).toContain('replaced by a backup');
    manager.close();
  });

  test.each([
    ['an altered signature', `UPDATE checkpoint SET signature = CASE substr(signature, 1, 1) WHEN '0' THEN '1' ELSE '0' END || substr(signature, 2)`, 'not signed by the laboratory’s key'],
    ['an altered statement', `UPDATE checkpoint SET statement = replace(statement, 'asked', 'day')`, 'not signed by the laboratory’s key'],
    ['another public key', `UPDATE signing_key SET public_key = '${'ab'.repeat(32)}'`, 'not signed by the laboratory’s key'],
    ['newest entries cut off', `DELETE FROM audit_entry WHERE seq >= (SELECT max(seq) - 3 FROM audit_entry)`, 'cut off'],
  ])('%s is named', async (_what, sql, words) => {
    const { manager, checkpoints, note, faultOf } = await begun();
    await note(2);
    await checkpoints.make('asked', null);
    const { file } = manager.current()!;
    manager.close();
    outside(file, sql);
    await manager.openAtStart();
    expect(await faultOf()).toMatchObject({ sound: false, fault: expect.stringContaining(words) as string });
    manager.close();
  });

  test('a ledger whose hashes were all made anew is found by the signature alone', async () => {
    const { manager, checkpoints, note } = await begun();
    await note(2);
    await checkpoints.make('asked', null);
    const { file } = manager.current()!;
    const { folder } = manager.besideBackups();
    manager.close();
    for (const name of readdirSync(folder).filter((one) => one.endsWith('.json'))) rmSync(path.join(folder, name));
    expect(keptCheckpoints(folder)).toEqual([]);
    outside(file, `UPDATE audit_entry SET hash = '${'cd'.repeat(32)}' WHERE seq = (SELECT max(seq) - 1 FROM audit_entry)`);
    await manager.openAtStart();
    const verified = (await manager.current()!.ledgers.verify({ at: '2026-11-25T09:00:00.000Z' }))!;
    expect(verified.parts.find((part) => part.part === 'checkpoints')).toMatchObject({ sound: false, fault: expect.stringMatching(/written anew between entry 1 and entry \d+/) as string });
    manager.close();
  });

  test('a bent file beside the backups proves nothing and does no harm', async () => {
    const { manager, checkpoints, faultOf } = await begun();
    const made = await checkpoints.make('asked', null);
    if (!made.ok) throw new Error(made.error.message);
    writeFileSync(made.value.file, readFileSync(made.value.file, 'utf8').replace('"asked"', '"day"'));
    expect(await faultOf()).toMatchObject({ sound: true, checked: 1 });
    manager.close();
  });
});

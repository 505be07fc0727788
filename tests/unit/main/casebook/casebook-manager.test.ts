import BetterSqlite from 'better-sqlite3';
import { existsSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { createCasebookManager } from '../../../../main/casebook/casebook-manager.ts';
import { DAILY_MS, KEEP_BACKUPS } from '../../../../main/casebook/backups.ts';
import { intake } from '../../db/made-casebook.ts';
import { ADA, LABORATORY, madeManager, movableClock } from './made-manager.ts';

const DONE = { ok: true, value: { done: true } };
const noProgress = () => {};

async function started() {
  const clock = movableClock();
  const made = madeManager(clock);
  await made.manager.openAtStart();
  const created = await made.manager.create(LABORATORY, ADA);
  if (!created.ok) throw new Error(created.error.message);
  return { ...made, clock, personId: created.value.personId, again: () => createCasebookManager(made.options) };
}

async function takeIn(manager: Awaited<ReturnType<typeof started>>['manager'], personId: string): Promise<void> {
  await manager.current()!.cases.takeIn({ at: '2026-03-02T10:00:00.000Z', personId, operation: 'cases.takeIn' }, intake());
}

const caseCount = async (manager: Awaited<ReturnType<typeof started>>['manager']): Promise<number> =>
  (await manager.current()!.cases.list({ text: '', state: 'all', limit: 10, offset: 0 })).total;

describe('starting', () => {
  test('nothing is there at first, and nothing is made unasked', async () => {
    const { manager, options } = madeManager();
    await manager.openAtStart();
    expect([manager.current(), manager.trouble()]).toEqual([null, null]);
    expect(readdirSync(options.dataFolder)).toEqual([]);
  });
  test('one’s own casebook is made once, its first person manages it, and it is open at the next start', async () => {
    const { manager, again, personId } = await started();
    expect((await manager.standing({ personId })).person!.roles).toEqual(['examiner', 'manager']);
    expect(await manager.create(LABORATORY, ADA)).toMatchObject({ ok: false, error: { code: 'conflict' } });
    manager.close();
    const next = again();
    await next.openAtStart();
    expect((await next.current()!.laboratory.get())!.name).toBe('Invented Laboratory');
    next.close();
  });
  test('a lost casebook is trouble with a way back, never a new beginning', async () => {
    const { manager, again, options } = await started();
    manager.close();
    rmSync(join(options.dataFolder, 'Casebook.culet'));
    const next = again();
    await next.openAtStart();
    expect(next.trouble()).toMatchObject({ code: 'missing', book: 'own' });
    expect(await next.create(LABORATORY, ADA)).toMatchObject({ ok: false });
    expect(existsSync(join(options.dataFolder, 'Casebook.culet'))).toBe(false);
  });
  test('without its memory the program still finds the casebook', async () => {
    const { manager, again, options } = await started();
    manager.close();
    writeFileSync(join(options.dataFolder, 'state.json'), '\0\0\0');
    const next = again();
    await next.openAtStart();
    expect(next.current()).not.toBeNull();
    next.close();
  });
  test('guards that were taken away are put back, and the audit ledger keeps that they were', async () => {
    const { manager, again, options } = await started();
    manager.close();
    const outside = new BetterSqlite(join(options.dataFolder, 'Casebook.culet'));
    outside.exec('DROP TRIGGER report_no_update');
    outside.close();
    const next = again();
    await next.openAtStart();
    expect(next.current()!.guardsRestored).toEqual(['report_no_update']);
    const [entry] = (await next.current()!.audit.list({ caseId: null, limit: 1, offset: 0 })).rows;
    expect(entry).toMatchObject({ operation: 'casebook.open', subject: 'guards', content: '{"restored":["report_no_update"]}' });
    next.close();
  });
  test('a casebook open elsewhere is said to be in use', async () => {
    const { manager, again } = await started();
    const second = again();
    await second.openAtStart();
    expect(second.trouble()!.code).toBe('in-use');
    manager.close();
  });
});

describe('the demonstration', () => {
  test('is built once, remembered, and left for the first choice', async () => {
    let built = 0;
    const { options } = madeManager();
    const withCount = { ...options, buildDemonstration: async (...args: Parameters<typeof options.buildDemonstration>) => { built += 1; await options.buildDemonstration(...args); } };
    const first = createCasebookManager(withCount);
    await first.openAtStart();
    expect(await first.openDemonstration(noProgress)).toEqual(DONE);
    expect((await first.current()!.laboratory.get())!.isDemonstration).toBe(true);
    first.close();
    const second = createCasebookManager(withCount);
    await second.openAtStart();
    expect(second.current()!.file).toContain('Demonstration.culet');
    expect(await second.closeDemonstration()).toEqual(DONE);
    expect([second.current(), second.trouble()]).toEqual([null, null]);
    expect(await second.openDemonstration(noProgress)).toEqual(DONE);
    expect(built).toBe(1);
    second.close();
  });
  test('from one’s own casebook and back again', async () => {
    const { manager } = await started();
    await manager.openDemonstration(noProgress);
    await manager.closeDemonstration();
    expect((await manager.current()!.laboratory.get())!.isDemonstration).toBe(false);
    expect(await manager.closeDemonstration()).toMatchObject({ ok: false });
    manager.close();
  });
  test('one that fails while it is built leaves nothing, and the casebook that was open stays open', async () => {
    const { options } = madeManager();
    const manager = createCasebookManager({ ...options, buildDemonstration: async () => { throw new Error('no simulator'); } });
    await manager.create(LABORATORY, ADA);
    await expect(manager.openDemonstration(noProgress)).rejects.toThrow('no simulator');
    expect(manager.current()!.file).toContain('Casebook.culet');
    manager.close();
    expect(readdirSync(options.dataFolder).filter((name) => name.startsWith('Demonstration'))).toEqual([]);
  });
});

describe('backups', () => {
  test('one a day at the start, ten kept', async () => {
    const { manager, again, options, clock } = await started();
    manager.close();
    const starts = async (): Promise<number> => {
      const next = again();
      await next.openAtStart();
      next.close();
      return readdirSync(join(options.dataFolder, 'backups')).length;
    };
    expect(await starts()).toBe(1);
    expect(await starts()).toBe(1);
    for (let day = 0; day < KEEP_BACKUPS + 3; day++) {
      clock.forward(DAILY_MS);
      await starts();
    }
    expect(await starts()).toBe(KEEP_BACKUPS);
  });
  test('a backup on request stands in the audit ledger', async () => {
    const { manager, personId } = await started();
    const made = await manager.backup({ at: '2026-03-02T10:00:00.000Z', personId, operation: 'casebook.backup' });
    expect(made.ok && existsSync(made.value.file)).toBe(true);
    expect((await manager.current()!.audit.list({ caseId: null, limit: 1, offset: 0 })).rows[0]!.operation).toBe('casebook.backup');
    manager.close();
  });
});

describe('restoring', () => {
  async function withBackup() {
    const made = await started();
    await takeIn(made.manager, made.personId);
    await made.manager.backup({ at: '2026-03-02T10:00:00.000Z', personId: made.personId, operation: 'casebook.backup' });
    await takeIn(made.manager, made.personId);
    return made;
  }
  test('brings the old state back, keeps the present one, and can be undone', async () => {
    const { manager, personId, options } = await withBackup();
    const [asked] = manager.backups();
    expect(await manager.restore(asked!.file, personId)).toEqual(DONE);
    expect(await caseCount(manager)).toBe(1);
    expect((await manager.current()!.audit.list({ caseId: null, limit: 1, offset: 0 })).rows[0]).toMatchObject({ operation: 'casebook.restore', person: 'Ada Invented' });
    const before = manager.backups().find((b) => b.file.includes('before-restore'))!;
    expect(await manager.restore(before.file, personId)).toEqual(DONE);
    expect(await caseCount(manager)).toBe(2);
    expect(readdirSync(options.dataFolder).filter((name) => name.includes('set aside'))).toHaveLength(2);
    manager.close();
  });
  test('helps where the casebook is damaged, and keeps the damaged file', async () => {
    const { manager, again, options } = await withBackup();
    manager.close();
    writeFileSync(join(options.dataFolder, 'Casebook.culet'), Buffer.alloc(40_000, 7));
    const next = again();
    await next.openAtStart();
    expect(next.trouble()!.code).toBe('damaged');
    expect(await next.restore(next.backups()[0]!.file, null)).toEqual(DONE);
    expect(next.trouble()).toBeNull();
    expect(await caseCount(next)).toBe(1);
    expect(readdirSync(options.dataFolder).filter((name) => name.includes('set aside'))).toHaveLength(1);
    next.close();
  });
  test('a backup that is not sound changes nothing', async () => {
    const { manager, personId } = await withBackup();
    const { file } = manager.backups()[0]!;
    writeFileSync(file, Buffer.alloc(40_000, 7));
    expect(await manager.restore(file, personId)).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect(await caseCount(manager)).toBe(2);
    manager.close();
  });
  test('a casebook that another program has open is not replaced', async () => {
    const { manager, again, options } = await withBackup();
    const second = again();
    await second.openAtStart();
    expect(await second.restore(second.backups()[0]!.file, null)).toMatchObject({ ok: false, error: { code: 'busy' } });
    expect(readdirSync(options.dataFolder).filter((name) => name.includes('set aside') || name.includes('.part'))).toEqual([]);
    expect(await caseCount(manager)).toBe(2);
    manager.close();
  });
  test('only files among the backups are taken', async () => {
    const { manager, personId, options } = await withBackup();
    const elsewhere = join(options.dataFolder, 'elsewhere.culet');
    renameSync(manager.backups()[0]!.file, elsewhere);
    expect(await manager.restore(elsewhere, personId)).toMatchObject({ ok: false, error: { code: 'not-found' } });
    manager.close();
  });
});

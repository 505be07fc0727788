import BetterSqlite from 'better-sqlite3';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openCasebook } from '../../../db/open-casebook.ts';
import { intake, madeCasebook, MIGRATIONS, steadyDeps, temporaryFolder } from './made-casebook.ts';

const codeOf = (outcome: ReturnType<typeof openCasebook>): string => {
  if (!outcome.ok) return outcome.error.code;
  outcome.value.close();
  return 'opened';
};

describe('openCasebook', () => {
  test('a new casebook is sound, guarded, and leaves one file when closed', async () => {
    const { casebook, file, options } = await madeCasebook();
    expect(casebook.guardsRestored).toEqual([]);
    casebook.close();
    casebook.close();
    expect(existsSync(`${file}-wal`)).toBe(false);
    expect(codeOf(openCasebook(options))).toBe('opened');
  });
  test('a known casebook that is gone is never begun anew', () => {
    const file = join(temporaryFolder(), 'Casebook.culet');
    const outcome = openCasebook({ file, mustExist: true, migrationsFolder: MIGRATIONS, ...steadyDeps() });
    expect(codeOf(outcome)).toBe('missing');
    expect(existsSync(file)).toBe(false);
  });
  test('a known casebook of which nothing is left is damaged, not gone, and stays as it is', () => {
    const file = join(temporaryFolder(), 'Casebook.culet');
    writeFileSync(file, '');
    const outcome = openCasebook({ file, mustExist: true, migrationsFolder: MIGRATIONS, ...steadyDeps() });
    expect(outcome).toMatchObject({ ok: false, error: { code: 'damaged', message: expect.stringContaining('it is empty: 0 bytes') as string } });
    expect(readFileSync(file).byteLength).toBe(0);
  });
  test('a folder that is not there can’t be written', () => {
    expect(codeOf(openCasebook({ file: join(temporaryFolder(), 'no', 'Casebook.culet'), mustExist: false, migrationsFolder: MIGRATIONS, ...steadyDeps() }))).toBe('cannot-write');
  });
  test('another program’s database is left as it is', () => {
    const file = join(temporaryFolder(), 'other.db');
    const other = new BetterSqlite(file);
    other.exec('CREATE TABLE a (b)');
    other.close();
    const before = readFileSync(file);
    expect(codeOf(openCasebook({ file, mustExist: true, migrationsFolder: MIGRATIONS, ...steadyDeps() }))).toBe('not-a-casebook');
    expect(readFileSync(file).equals(before)).toBe(true);
  });
  test('a text file is no casebook', () => {
    const file = join(temporaryFolder(), 'letter.culet');
    writeFileSync(file, 'Dear client, '.repeat(100));
    expect(codeOf(openCasebook({ file, mustExist: true, migrationsFolder: MIGRATIONS, ...steadyDeps() }))).toBe('damaged');
  });
  test('a casebook that is open can’t be opened again, for writing or reading', async () => {
    const { casebook, options } = await madeCasebook();
    expect(codeOf(openCasebook(options))).toBe('in-use');
    expect(codeOf(openCasebook({ ...options, readOnly: true }))).toBe('in-use');
    casebook.close();
  });
  test('looking without writing: reads, verifies, refuses to write, puts no guard back', async () => {
    const { casebook, file, options, deps, personId } = await madeCasebook();
    const taken = await casebook.cases.takeIn({ at: deps.now().toISOString(), personId, operation: 'cases.takeIn' }, intake());
    casebook.close();
    const outside = new BetterSqlite(file);
    outside.exec('DROP TRIGGER custody_entry_no_delete');
    outside.close();
    const looked = openCasebook({ ...options, readOnly: true });
    if (!looked.ok || !taken.ok) throw new Error('did not open');
    expect(looked.value.guardsRestored).toEqual(['custody_entry_no_delete']);
    expect((await looked.value.cases.get(taken.value.caseId))!.number).toBe('C-2026-0001');
    const verified = await looked.value.ledgers.verify({ at: deps.now().toISOString() });
    expect(verified!.parts.find((part) => part.part === 'guards')!.sound).toBe(false);
    await expect(looked.value.drafts.put('a', 1, deps.now().toISOString())).rejects.toThrow(/readonly/);
    looked.value.close();
  });
});

import BetterSqlite from 'better-sqlite3';
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { DatabaseNewerThanProgram, migrate, MigrationFailed } from '../../../db/migrate.ts';
import { openCasebook } from '../../../db/open-casebook.ts';
import { intake, madeCasebook, MIGRATIONS, temporaryFolder } from './made-casebook.ts';

const KNOWN = (JSON.parse(readFileSync(join(MIGRATIONS, 'meta', '_journal.json'), 'utf8')) as { entries: unknown[] }).entries.length;

type Journal = { entries: { idx: number; version: string; when: number; tag: string; breakpoints: boolean }[] };

/** The program's migrations and further ones, in a folder of their own. */
function folderWith(...further: string[]): string {
  const folder = join(temporaryFolder(), 'migrations');
  cpSync(MIGRATIONS, folder, { recursive: true });
  const journalFile = join(folder, 'meta', '_journal.json');
  const journal = JSON.parse(readFileSync(journalFile, 'utf8')) as Journal;
  further.forEach((sql, i) => {
    const idx = journal.entries.length;
    const tag = `${String(idx).padStart(4, '0')}_further_${i}`;
    writeFileSync(join(folder, `${tag}.sql`), sql);
    journal.entries.push({ idx, version: '6', when: journal.entries[idx - 1]!.when + 1, tag, breakpoints: true });
  });
  writeFileSync(journalFile, JSON.stringify(journal));
  return folder;
}

/** A table rebuilt as the generator writes it: new table, copy, drop, rename. */
const TEST_RUN = readFileSync(join(MIGRATIONS, '0000_first.sql'), 'utf8').split('--> statement-breakpoint').find((sql) => sql.includes('CREATE TABLE `test_run`'))!;
const REBUILD = [
  'PRAGMA foreign_keys=OFF;', TEST_RUN.replace('`test_run`', '`__new_test_run`'), 'INSERT INTO `__new_test_run` SELECT * FROM `test_run`;', 'DROP TABLE `test_run`;', 'ALTER TABLE `__new_test_run` RENAME TO `test_run`;', 'PRAGMA foreign_keys=ON;',
].join('--> statement-breakpoint\n');

async function closedCasebook() {
  const made = await madeCasebook();
  const taken = await made.casebook.cases.takeIn({ at: made.deps.now().toISOString(), personId: made.personId, operation: 'cases.takeIn' }, intake());
  if (!taken.ok) throw new Error(taken.error.message);
  made.casebook.close();
  return made;
}

const bare = { now: () => new Date('2026-03-02T09:00:00.000Z'), backup: () => {} };

describe('migrations', () => {
  test('a further one is applied once, after a backup, and the rows stay', async () => {
    const { options } = await closedCasebook();
    const migrationsFolder = folderWith('ALTER TABLE client ADD COLUMN language TEXT;');
    const copy = join(temporaryFolder(), 'before.culet');
    const opened = openCasebook({ ...options, migrationsFolder, backupBeforeMigration: () => copy });
    if (!opened.ok) throw new Error(opened.error.message);
    expect(opened.value.handle.read.get('SELECT name, language FROM client')).toEqual({ name: 'Invented Client', language: null });
    opened.value.close();
    const kept = openCasebook({ ...options, file: copy });
    expect(kept.ok).toBe(true);
    if (kept.ok) {
      expect((await kept.value.cases.list({ text: '', state: 'all', limit: 10, offset: 0 })).total).toBe(1);
      kept.value.close();
    }
  });
  test('a casebook of a newer version is refused and said to be unchanged', async () => {
    const { options, file } = await closedCasebook();
    const newer = openCasebook({ ...options, migrationsFolder: folderWith('ALTER TABLE client ADD COLUMN language TEXT;') });
    if (newer.ok) newer.value.close();
    const before = readFileSync(file);
    const outcome = openCasebook(options);
    expect(outcome).toMatchObject({ ok: false, error: { code: 'newer', message: expect.stringContaining('Nothing was changed') as string } });
    expect(readFileSync(file).equals(before)).toBe(true);
  });
  test('an applied migration that was edited is refused', async () => {
    const { options } = await closedCasebook();
    const folder = folderWith();
    const [first] = (JSON.parse(readFileSync(join(folder, 'meta', '_journal.json'), 'utf8')) as Journal).entries;
    writeFileSync(join(folder, `${first!.tag}.sql`), `${readFileSync(join(folder, `${first!.tag}.sql`), 'utf8')}\n-- edited\n`);
    expect(openCasebook({ ...options, migrationsFolder: folder })).toMatchObject({ ok: false, error: { code: 'history' } });
  });
  test('a migration that would lose evidence is undone', async () => {
    const { file } = await closedCasebook();
    const sqlite = new BetterSqlite(file);
    const folder = folderWith('DROP TRIGGER custody_entry_no_delete;--> statement-breakpoint\nDELETE FROM custody_entry;');
    expect(() => migrate(sqlite, { ...bare, migrationsFolder: folder })).toThrow(MigrationFailed);
    expect(sqlite.prepare('SELECT count(*) AS n FROM custody_entry').get()).toEqual({ n: 2 });
    expect(sqlite.pragma('foreign_keys', { simple: true })).toBe(1);
    sqlite.close();
  });
  test('a statement that fails halfway leaves nothing behind', async () => {
    const { file } = await closedCasebook();
    const sqlite = new BetterSqlite(file);
    expect(() => migrate(sqlite, { ...bare, migrationsFolder: folderWith('CREATE TABLE extra (a);--> statement-breakpoint\nCREATE TABLE extra (a);') })).toThrow(/already exists/);
    expect(sqlite.prepare(`SELECT 1 FROM sqlite_master WHERE name = 'extra'`).get()).toBeUndefined();
    expect(sqlite.prepare('SELECT count(*) AS n FROM migration').get()).toEqual({ n: KNOWN });
    sqlite.close();
  });
  test('the same at opening is told in a sentence, and the casebook stays as it was', async () => {
    const { options } = await closedCasebook();
    const outcome = openCasebook({ ...options, migrationsFolder: folderWith('ALTER TABLE nowhere ADD COLUMN a TEXT;') });
    expect(outcome).toMatchObject({ ok: false, error: { code: 'migration-failed', message: expect.stringContaining('no such table') as string } });
    const opened = openCasebook(options);
    expect(opened.ok).toBe(true);
    if (opened.ok) opened.value.close();
  });
  test('a backup that can’t be made stops everything', async () => {
    const { file } = await closedCasebook();
    const sqlite = new BetterSqlite(file);
    const backup = () => { throw new Error('disk full'); };
    expect(() => migrate(sqlite, { ...bare, backup, migrationsFolder: folderWith('CREATE TABLE extra (a);') })).toThrow('disk full');
    expect(sqlite.prepare(`SELECT 1 FROM sqlite_master WHERE name = 'extra'`).get()).toBeUndefined();
    sqlite.close();
  });
  test('a rebuilt table gets its guards back, which is no sign of tampering', async () => {
    const { options } = await closedCasebook();
    const opened = openCasebook({ ...options, migrationsFolder: folderWith(REBUILD) });
    if (!opened.ok) throw new Error(opened.error.message);
    expect(opened.value.guardsRestored).toEqual([]);
    expect(opened.value.handle.read.all(`SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name = 'test_run'`)).toHaveLength(3);
    opened.value.close();
  });
  test('more applied than known throws before anything is written', async () => {
    const { file } = await closedCasebook();
    const sqlite = new BetterSqlite(file);
    sqlite.prepare('INSERT INTO migration (seq, hash, applied_at) VALUES (?, ?, ?)').run(KNOWN + 1, 'x', 'y');
    expect(() => migrate(sqlite, { ...bare, migrationsFolder: MIGRATIONS })).toThrow(DatabaseNewerThanProgram);
    sqlite.close();
  });
  test('a casebook from before calibrations keeps its instruments, checks and cases, after a backup', async () => {
    const early = join(temporaryFolder(), 'migrations');
    cpSync(MIGRATIONS, early, { recursive: true });
    const journal = JSON.parse(readFileSync(join(early, 'meta', '_journal.json'), 'utf8')) as Journal;
    writeFileSync(join(early, 'meta', '_journal.json'), JSON.stringify({ ...journal, entries: journal.entries.slice(0, 1) }));
    const file = join(temporaryFolder(), 'Early.culet');
    const sqlite = new BetterSqlite(file);
    migrate(sqlite, { ...bare, migrationsFolder: early });
    sqlite.exec(`
      INSERT INTO person VALUES ('ada', 'Ada Invented', 'AI', '["manager"]', 1, 'at');
      INSERT INTO instrument VALUES ('pl', 'Photoluminescence', '["photoluminescence"]', '', '', '{}', 30, 1, 'at');
      INSERT INTO instrument_check VALUES ('check', 'pl', '2026-03-01T09:00:00.000Z', 'ada', 1, 'mercury lamp', 'residual 0.04 nm');`);
    const before = sqlite.prepare('SELECT * FROM instrument_check').all() as object[];
    let backups = 0;
    expect(migrate(sqlite, { ...bare, backup: () => { backups++; }, migrationsFolder: MIGRATIONS })).toBe(KNOWN - 1);
    expect(backups).toBe(1);
    expect(sqlite.prepare('SELECT * FROM instrument_check').all()).toEqual(before.map((row) => ({ ...row, quantity: null, unit: null, value: null, expected: null, tolerance: null, after_service: null })));
    expect(sqlite.prepare('SELECT count(*) AS n FROM calibration').get()).toEqual({ n: 0 });
    expect(() => sqlite.exec(`INSERT INTO calibration VALUES ('c', 'nowhere', 'at', 'ada', 'check', 's', 'nm', 'note', 0.1, 'f', 'd', '{}')`)).toThrow(/FOREIGN KEY/);
    sqlite.exec(`INSERT INTO calibration VALUES ('c', 'pl', 'at', 'ada', 'check', 's', 'nm', 'note', 0.1, 'f', 'd', '{}')`);
    sqlite.close();
  });
  test('a casebook from before lots keeps its items and their digests, and takes a lot’s book', async () => {
    const early = join(temporaryFolder(), 'migrations');
    cpSync(MIGRATIONS, early, { recursive: true });
    const journal = JSON.parse(readFileSync(join(early, 'meta', '_journal.json'), 'utf8')) as Journal;
    writeFileSync(join(early, 'meta', '_journal.json'), JSON.stringify({ ...journal, entries: journal.entries.filter((entry) => entry.idx < journal.entries.find((one) => one.tag.endsWith('_lots_and_weights'))!.idx) }));
    const file = join(temporaryFolder(), 'BeforeLots.culet');
    const sqlite = new BetterSqlite(file);
    migrate(sqlite, { ...bare, migrationsFolder: early });
    sqlite.exec(`
      INSERT INTO person VALUES ('ada', 'Ada Invented', 'AI', '["manager"]', 1, 'at');
      INSERT INTO client VALUES ('client', 'Invented Client', '', '', '', '', 'at');
      INSERT INTO case_record VALUES ('case', 'C-1', 'client', 'at', NULL, '', '', 'open', 'ada', 'at');
      INSERT INTO parcel VALUES ('parcel', 'case', 1, '', '');
      INSERT INTO item VALUES ('item', 'case', 'parcel', 'A', 'lot', 'small stones', '', 81400, 'ct', 340, NULL, '');`);
    const before = sqlite.prepare('SELECT * FROM item').all();
    migrate(sqlite, { ...bare, migrationsFolder: MIGRATIONS });
    expect(sqlite.prepare('SELECT * FROM item').all()).toEqual(before);
    sqlite.exec(`INSERT INTO lot_record VALUES ('one', 'case', 'item', 1, 'count', '{}', 'at', 'ada')`);
    expect(() => sqlite.exec(`INSERT INTO lot_record VALUES ('two', 'case', 'item', 1, 'plan', '{}', 'at', 'ada')`)).toThrow(/UNIQUE/);
    expect(() => sqlite.exec(`INSERT INTO weight_record VALUES ('w', 'case', 'nowhere', NULL, '{}', 'at', 'ada')`)).toThrow(/FOREIGN KEY/);
    sqlite.close();
  });
  test('a casebook from before the system’s key store keeps the copies of its key as they were, and takes decisions', () => {
    const early = join(temporaryFolder(), 'migrations');
    cpSync(MIGRATIONS, early, { recursive: true });
    const journal = JSON.parse(readFileSync(join(early, 'meta', '_journal.json'), 'utf8')) as Journal;
    writeFileSync(join(early, 'meta', '_journal.json'), JSON.stringify({ ...journal, entries: journal.entries.filter((entry) => entry.idx < journal.entries.find((one) => one.tag.endsWith('_system_key_store'))!.idx) }));
    const sqlite = new BetterSqlite(join(temporaryFolder(), 'BeforeStore.culet'));
    migrate(sqlite, { ...bare, migrationsFolder: early });
    sqlite.exec(`
      INSERT INTO person VALUES ('ada', 'Ada Invented', 'AI', '["manager"]', 1, 'at');
      INSERT INTO signing_key VALUES ('key', 'ab', 'at', 'ada', '');
      INSERT INTO key_wrap VALUES ('key/ada', 'key', 'cd', 'ef', '0123', 'at');`);
    const before = sqlite.prepare('SELECT * FROM key_wrap').all() as object[];
    migrate(sqlite, { ...bare, migrationsFolder: MIGRATIONS });
    // NULL columns stand in no digest: what the ledger vouched for stays true.
    expect(sqlite.prepare('SELECT * FROM key_wrap').all()).toEqual(before.map((row) => ({ ...row, store: null })));
    sqlite.exec(`INSERT INTO key_store_choice VALUES ('one', 'at', 'ada', 0, 'two computers')`);
    expect(() => sqlite.exec(`INSERT INTO key_store_choice VALUES ('two', 'at', 'nobody', 1, '')`)).toThrow(/FOREIGN KEY/);
    sqlite.close();
  });
  test('every table is strict', () => {
    const sqlite = new BetterSqlite(':memory:');
    migrate(sqlite, { ...bare, migrationsFolder: MIGRATIONS });
    const loose = sqlite.prepare(`SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'`).all();
    expect(loose).toEqual([]);
    sqlite.close();
  });
});

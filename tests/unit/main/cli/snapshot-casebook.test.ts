import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import BetterSqlite from 'better-sqlite3';
import { snapshotCasebook } from '../../../../main/cli/snapshot-casebook.ts';

let folder = '';
beforeEach(() => { folder = mkdtempSync(path.join(tmpdir(), 'culet-snapshot-')); });
afterEach(() => { rmSync(folder, { recursive: true, force: true }); });

test('holds what stands only in the write-ahead log of a database that another holds', async () => {
  const file = path.join(folder, 'a.culet');
  const held = new BetterSqlite(file);
  held.pragma('locking_mode = EXCLUSIVE');
  held.pragma('journal_mode = WAL');
  held.exec('CREATE TABLE t (x)');
  for (let i = 0; i < 50; i++) held.prepare('INSERT INTO t VALUES (?)').run(i);
  const made = await snapshotCasebook(file);
  if (!made.ok) throw new Error(made.error.code);
  const copy = new BetterSqlite(made.value.file);
  expect(copy.prepare('SELECT count(*) AS n FROM t').get()).toEqual({ n: 50 });
  copy.close();
  made.value.remove();
  expect(existsSync(made.value.file)).toBe(false);
  held.close();
});

test('gives up on a file that never rests, and leaves nothing', async () => {
  const file = path.join(folder, 'busy.culet');
  writeFileSync(file, 'a');
  const writing = setInterval(() => { writeFileSync(file, 'a'); }, 2);
  expect(await snapshotCasebook(file, { tries: 3, waitMs: 5, quietMs: 50 })).toEqual({ ok: false, error: { code: 'never-rests' } });
  clearInterval(writing);
});

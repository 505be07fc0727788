import type Database from 'better-sqlite3';
import BetterSqlite from 'better-sqlite3';
import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

export type BackupOutcome = { readonly file: string; readonly bytes: number };

function counts(sqlite: Database.Database): string {
  const present = sqlite.prepare(`SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name`).all() as { name: string }[];
  return present.map(({ name }) =>
    `${name}=${(sqlite.prepare(`SELECT count(*) AS n FROM "${name}"`).get() as { n: number }).n}`).join(' ');
}

function syncPath(path: string): void {
  let fd: number | null = null;
  try {
    fd = openSync(path, 'r');
    fsyncSync(fd);
  } catch {
    // Windows does not open folders; the rename is still atomic there.
  } finally {
    if (fd !== null) closeSync(fd);
  }
}

function checkCopy(temporary: string, expected: string): void {
  const copy = new BetterSqlite(temporary, { readonly: true, fileMustExist: true });
  try {
    const integrity = copy.pragma('integrity_check(1)', { simple: true });
    if (integrity !== 'ok') throw new Error(`the copy is not sound: ${String(integrity)}`);
    if (counts(copy) !== expected) throw new Error('the copy does not hold the same rows');
  } finally {
    copy.close();
  }
}

/**
 * Writes a sound copy of the open casebook to `target`: VACUUM INTO beside it, integrity and rows checked, then renamed into place.
 * An open casebook is never copied as a file: its newest rows would be missing. Throws where the copy can't be written or is not sound;
 * what stood at `target` before is then untouched.
 */
export function backupCasebook(sqlite: Database.Database, target: string): BackupOutcome {
  const temporary = `${target}.part`;
  if (existsSync(temporary)) rmSync(temporary);
  try {
    sqlite.prepare('VACUUM INTO ?').run(temporary);
    checkCopy(temporary, counts(sqlite));
    syncPath(temporary);
    renameSync(temporary, target);
    syncPath(dirname(target));
  } catch (e) {
    rmSync(temporary, { force: true });
    throw e;
  }
  return { file: target, bytes: statSync(target).size };
}

import BetterSqlite from 'better-sqlite3';
import type Database from 'better-sqlite3';
import { pathToFileURL } from 'node:url';
import { fold } from './fold.ts';
import { createHandle, type ReadDb } from './handle.ts';

// Read once, when the binding is first used: file names may then say how they are opened. A casebook's own name is absolute and never taken for one.
process.env['SQLITE_USE_URI'] ??= '1';

/** Indexes and queries ask SQLite for texts without accents and capitals. */
export function teachFold(sqlite: Database.Database): void {
  sqlite.function('fold', { deterministic: true }, (text) => (typeof text === 'string' ? fold(text) : null));
}

export type Reader = { readonly db: ReadDb; close(): void };

/**
 * A further connection that only reads.
 * `still`: this process has the casebook open, and locked, and keeps the file as it is (`Casebook.still`): SQLite's “immutable” then reads it
 * past the lock, without the write-ahead log, and the lock stays. Otherwise the file is free, and the connection keeps others from taking it.
 * Throws what SQLite throws.
 */
export function openReader(file: string, still: boolean): Reader {
  const sqlite = new BetterSqlite(still ? `${pathToFileURL(file).href}?immutable=1` : file, { readonly: true, fileMustExist: true });
  try {
    teachFold(sqlite);
    sqlite.pragma('trusted_schema = OFF');
    return { db: createHandle(sqlite).read, close: () => { sqlite.close(); } };
  } catch (e) {
    sqlite.close();
    throw e;
  }
}

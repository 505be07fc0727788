import BetterSqlite from 'better-sqlite3';
import type Database from 'better-sqlite3';
import { existsSync, statSync } from 'node:fs';
import { err, ok, type Result } from '../app/result.ts';
import { backupCasebook, type BackupOutcome } from './backup-casebook.ts';
import { expectedDefinitions, strangeDefinitions } from './definitions.ts';
import { dropForeignTriggers, ensureGuards, missingGuards } from './guards.ts';
import { createHandle, type StoreHandle } from './handle.ts';
import { DatabaseNewerThanProgram, migrate, MigrationFailed, MigrationHistoryError, pendingMigrations } from './migrate.ts';
import { openFailure, type OpenFailure } from './open-failure.ts';
import { teachFold } from './open-reader.ts';
import { rebuildSearch, searchIsWhole } from './search/write-search.ts';
import { dropLeftOver, hasLeftOver } from './store/bundle-pieces.ts';
import { keepSince } from './store/laboratory.ts';
import { createStores, type Stores } from './stores.ts';

/** "CULT" in the header of the file: a casebook says what it is. */
export const APPLICATION_ID = 0x43554c54;

/** How long SQLite waits for another program to let go before the file counts as in use. */
const BUSY_MS = 800;

export type OpenOptions = {
  readonly file: string;
  /** True once a casebook is known to be there: a lost file is then an error, never a new empty casebook. */
  readonly mustExist: boolean;
  readonly migrationsFolder: string;
  readonly now: () => Date;
  readonly newId: () => string;
  /** For looking at a casebook without touching it: no migration, no guard put back, no write. */
  readonly readOnly?: boolean;
  /** Whoever opens it looks at the whole file by himself: SQLite's check at opening is left out. Only for reading. */
  readonly unchecked?: boolean;
  /** Where to put a copy before a migration; without it none is made. */
  readonly backupBeforeMigration?: () => string;
};

export type Casebook = Stores & {
  readonly file: string;
  readonly readOnly: boolean;
  /** Guards that had to be put back at this opening, and triggers of others that were taken out (read-only: guards that are missing). */
  readonly guardsRestored: readonly string[];
  /** What is defined in the file otherwise than the program defines it, a sentence for each; looked up anew at every call. */
  strange(): readonly string[];
  readonly handle: StoreHandle;
  /** Writes a checked copy to `target`. */
  backup(target: string): Promise<Result<BackupOutcome, OpenFailure>>;
  /**
   * Keeps the file as it is now while `work` reads it by connections of its own (`openReader`): what is written meanwhile waits in the
   * write-ahead log. Null where the casebook was closed before `work` was done: what it found may then be of a file that changed.
   */
  still<T>(work: (file: string) => Promise<T>): Promise<T | null>;
  /** Folds the write-ahead log into the file and lets go of it. Calling it twice does no harm. */
  close(): void;
};

const isNew = (file: string): boolean => !existsSync(file) || statSync(file).size === 0;

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

function failureOf(error: unknown, file: string): OpenFailure {
  const code = codeOf(error);
  if (error instanceof DatabaseNewerThanProgram) return openFailure('newer', file, error.message);
  if (error instanceof MigrationHistoryError) return openFailure('history', file, error.message);
  if (error instanceof MigrationFailed) return openFailure('migration-failed', file, error.message);
  if (code.startsWith('SQLITE_BUSY') || code === 'SQLITE_LOCKED') return openFailure('in-use', file);
  if (code === 'SQLITE_NOTADB') return openFailure('damaged', file, 'its first bytes are not those of a casebook');
  if (code.startsWith('SQLITE_CORRUPT')) return openFailure('damaged', file);
  if (code.startsWith('SQLITE_IOERR')) return openFailure('damaged', file, 'it can’t be read to the end');
  if (code.startsWith('SQLITE_READONLY') || code === 'SQLITE_FULL' || code === 'SQLITE_PERM' || code.startsWith('SQLITE_CANTOPEN') || code === 'EACCES' || code === 'EROFS') {
    return openFailure('cannot-write', file, code === 'SQLITE_FULL' ? 'the disk is full' : '');
  }
  throw error;
}

/** Settings of the connection; the reasons stand beside those that are not SQLite's own defaults. */
function setPragmas(sqlite: Database.Database, readOnly: boolean): void {
  if (!readOnly) {
    // Held until close and freed by the system if the process dies: two programs can't write one casebook.
    sqlite.pragma('locking_mode = EXCLUSIVE');
    sqlite.pragma('journal_mode = WAL');
    // NORMAL may lose the last commits at a power cut.
    sqlite.pragma('synchronous = FULL');
    // What a row held before stays in the page until something needs its place; a copy of the laboratory's key that was closed anew must be gone. FAST costs no further writing.
    sqlite.pragma('secure_delete = FAST');
  }
  sqlite.pragma('foreign_keys = ON');
  sqlite.pragma('trusted_schema = OFF');
  // Otherwise INSERT OR REPLACE slips past a BEFORE DELETE trigger.
  sqlite.pragma('recursive_triggers = ON');
}

/** So many faults are looked at: the search index may stand among them with one or two of its own. */
const FAULTS_LOOKED_AT = 8;

/** A broken search index is no damage of the records: it is told apart, and made anew. */
function checkSound(sqlite: Database.Database, file: string): { readonly damage: OpenFailure | null; readonly searchBroken: boolean } {
  const faults = (sqlite.pragma(`quick_check(${FAULTS_LOOKED_AT})`) as { quick_check: string }[]).map((row) => row.quick_check).filter((words) => words !== 'ok');
  const ofRecords = faults.filter((words) => !/fts5/i.test(words));
  return { damage: ofRecords.length > 0 ? openFailure('damaged', file, ofRecords[0]) : null, searchBroken: faults.length > ofRecords.length };
}

const UNCHECKED = { damage: null, searchBroken: false } as const;

/** A file that a first start left behind when it was cut off before the first table. */
function isBare(sqlite: Database.Database): boolean {
  return sqlite.pragma('application_id', { simple: true }) === 0 && sqlite.prepare('SELECT 1 FROM sqlite_master').get() === undefined;
}

type Prepared = { readonly guardsRestored: readonly string[]; readonly searchBroken: boolean };

/** Takes the file for this process, in the order that leaves a foreign or damaged file as it is. */
function prepare(sqlite: Database.Database, options: OpenOptions, empty: boolean): Result<Prepared, OpenFailure> {
  const { file } = options;
  const readOnly = options.readOnly ?? false;
  const fresh = empty || (!options.mustExist && !readOnly && isBare(sqlite));
  if (!fresh && sqlite.pragma('application_id', { simple: true }) !== APPLICATION_ID) return err(openFailure('not-a-casebook', file));
  setPragmas(sqlite, readOnly);
  if (!readOnly) sqlite.exec('BEGIN IMMEDIATE; COMMIT');
  const { damage, searchBroken } = readOnly && options.unchecked === true ? UNCHECKED : checkSound(sqlite, file);
  if (damage) return err(damage);
  const pending = fresh ? 1 : pendingMigrations(sqlite, options.migrationsFolder);
  if (readOnly) {
    if (pending > 0) return err({ ...openFailure('history', file, 'it is older'), next: 'Open it once in Culet, which brings it up to this version, then look at it again.' });
    return ok({ guardsRestored: missingGuards(sqlite), searchBroken: false });
  }
  if (fresh) sqlite.pragma(`application_id = ${APPLICATION_ID}`);
  // Before anything is written: it would act on that, too.
  const foreign = dropForeignTriggers(sqlite);
  const migrated = migrate(sqlite, {
    migrationsFolder: options.migrationsFolder, now: options.now,
    backup: () => { if (options.backupBeforeMigration) backupCasebook(sqlite, options.backupBeforeMigration()); },
  });
  const restored = ensureGuards(sqlite);
  // A migration that rebuilds a table drops its guards: putting those back is no sign of tampering.
  return ok({ guardsRestored: [...(migrated > 0 ? [] : restored), ...foreign], searchBroken });
}

/** Pages in the write-ahead log after which SQLite folds it into the file: its own default. */
const FOLD_AFTER_PAGES = 1000;

/** Who reads the file as it stood when they began; the first to come folds the log, the last to go lets SQLite fold it again. */
function createStillness(sqlite: Database.Database, { file, readOnly }: OpenOptions): Casebook['still'] {
  let readers = 0;
  return async (work) => {
    if (readOnly !== true && readers === 0) {
      sqlite.pragma('wal_autocheckpoint = 0');
      sqlite.pragma('wal_checkpoint(TRUNCATE)');
    }
    readers += 1;
    try {
      const value = await work(file);
      return sqlite.open ? value : null;
    } catch (e) {
      // A file that was let go may change under those who read it: what they stumble over says nothing.
      if (!sqlite.open) return null;
      throw e;
    } finally {
      readers -= 1;
      if (readOnly !== true && readers === 0 && sqlite.open) sqlite.pragma(`wal_autocheckpoint = ${FOLD_AFTER_PAGES}`);
    }
  };
}

function assemble(sqlite: Database.Database, options: OpenOptions, guardsRestored: readonly string[]): Casebook {
  const handle = createHandle(sqlite);
  const readOnly = options.readOnly ?? false;
  const definitions = expectedDefinitions(options.migrationsFolder);
  const strange = (): string[] => strangeDefinitions(sqlite, definitions);
  return {
    ...createStores(handle, () => options.newId(), { guardsRestored, strange }),
    file: options.file, readOnly, guardsRestored, strange, handle, still: createStillness(sqlite, options),
    async backup(target) {
      try {
        return ok(backupCasebook(sqlite, target));
      } catch (e) {
        return err(openFailure('cannot-write', target, e instanceof Error ? e.message : ''));
      }
    },
    close() {
      if (!sqlite.open) return;
      if (!readOnly) sqlite.pragma('wal_checkpoint(TRUNCATE)');
      sqlite.close();
    },
  };
}

/** The search index of a casebook from before there was one, or one that is broken or not whole, is made anew before anyone looks. */
function makeSearchWhole({ readOnly, handle }: Casebook, broken: boolean): void {
  if (!readOnly && (broken || !searchIsWhole(handle.read))) handle.transactNow((tx) => { rebuildSearch(tx); });
}

/** What a bundle left that was being taken in when the program died; it was never part of the records. */
function dropHalfTaken({ readOnly, handle }: Casebook): void {
  if (readOnly || !hasLeftOver(handle.read)) return;
  while (handle.transactNow(dropLeftOver) > 0);
}

/**
 * Opens a casebook, or makes a new one where none is there and `mustExist` is false.
 * Checks what the file is, whether it is sound, and whether this program may write it before changing anything;
 * then brings it up to this version and puts missing guards back.
 * Expected failures are values with a sentence and what to do next; only a fault in the program is thrown.
 */
export function openCasebook(options: OpenOptions): Result<Casebook, OpenFailure> {
  const { file } = options;
  const fresh = isNew(file);
  if (fresh && (options.mustExist || options.readOnly)) return err(existsSync(file) ? openFailure('damaged', file, 'it is empty: 0 bytes') : openFailure('missing', file));
  let sqlite: Database.Database;
  try {
    sqlite = new BetterSqlite(file, { fileMustExist: !fresh, readonly: options.readOnly ?? false, timeout: BUSY_MS });
  } catch (e) {
    // better-sqlite3 answers a missing folder with a TypeError that has no code.
    if (e instanceof TypeError) return err(openFailure('cannot-write', file, 'its folder is not there'));
    return err(failureOf(e, file));
  }
  try {
    teachFold(sqlite);
    const prepared = prepare(sqlite, options, fresh);
    if (!prepared.ok) {
      sqlite.close();
      return prepared;
    }
    const casebook = assemble(sqlite, options, prepared.value.guardsRestored);
    makeSearchWhole(casebook, prepared.value.searchBroken);
    if (options.readOnly !== true) keepSince(casebook.handle, options.now().toISOString());
    dropHalfTaken(casebook);
    return ok(casebook);
  } catch (e) {
    if (sqlite.open) sqlite.close();
    return err(failureOf(e, file));
  }
}

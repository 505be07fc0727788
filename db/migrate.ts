import type Database from 'better-sqlite3';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { guardedTables } from './guards.ts';

type MigrationFile = { sql: string[]; hash: string };

/** The casebook knows migrations this program does not. */
export class DatabaseNewerThanProgram extends Error {}
/** A migration that was applied is not the one this program carries. */
export class MigrationHistoryError extends Error {}
/** A pending migration failed or would lose rows of evidence; it left nothing behind. */
export class MigrationFailed extends Error {}

export type MigrateOptions = {
  /** Folder with the numbered SQL files and meta/_journal.json. */
  readonly migrationsFolder: string;
  readonly now: () => Date;
  /** Called once before the first pending migration of a casebook that has data; what it throws stops everything. */
  readonly backup: () => void;
};

function appliedHashes(sqlite: Database.Database): string[] {
  const table = sqlite.prepare(`SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'migration'`).get();
  if (!table) return [];
  return (sqlite.prepare('SELECT hash FROM migration ORDER BY seq').all() as { hash: string }[]).map((row) => row.hash);
}

function checkHistory(applied: readonly string[], files: readonly MigrationFile[]): void {
  if (applied.length > files.length) {
    throw new DatabaseNewerThanProgram(`it has ${applied.length} migrations, this version knows ${files.length}`);
  }
  applied.forEach((hash, i) => {
    if (hash !== files[i]!.hash) throw new MigrationHistoryError(`migration ${i + 1} is not the one that was applied`);
  });
}

function evidenceCounts(sqlite: Database.Database): Map<string, number> {
  const present = new Set((sqlite.prepare(`SELECT name FROM sqlite_master WHERE type = 'table'`).all() as { name: string }[]).map((t) => t.name));
  return new Map(guardedTables().filter((table) => present.has(table)).map((table) =>
    [table, (sqlite.prepare(`SELECT count(*) AS n FROM ${table}`).get() as { n: number }).n]));
}

/** The next step of the schema as one transaction; a fault in its SQL is told apart from a full disk or a locked file. */
function applyWhole(sqlite: Database.Database, file: MigrationFile, seq: number, at: string): void {
  try {
    sqlite.transaction(() => applyOne(sqlite, file, seq, at)).exclusive();
  } catch (e) {
    if (e instanceof Error && 'code' in e && (e.code === 'SQLITE_ERROR' || String(e.code).startsWith('SQLITE_CONSTRAINT'))) {
      throw new MigrationFailed(`migration ${seq}: ${e.message}`, { cause: e });
    }
    throw e;
  }
}

function applyOne(sqlite: Database.Database, file: MigrationFile, seq: number, at: string): void {
  const before = evidenceCounts(sqlite);
  for (const statement of file.sql) sqlite.exec(statement);
  const after = evidenceCounts(sqlite);
  for (const [table, count] of before) {
    if ((after.get(table) ?? 0) !== count) throw new MigrationFailed(`migration ${seq} would leave ${after.get(table) ?? 0} of ${count} rows in ${table}`);
  }
  if ((sqlite.pragma('foreign_key_check') as unknown[]).length > 0) throw new MigrationFailed(`migration ${seq} leaves references that lead nowhere`);
  sqlite.prepare('INSERT INTO migration (seq, hash, applied_at) VALUES (?, ?, ?)').run(seq, file.hash, at);
}

/** Throws like `migrate` where the history of this casebook does not fit the program; writes nothing. Returns how many migrations are pending. */
export function pendingMigrations(sqlite: Database.Database, migrationsFolder: string): number {
  const files: MigrationFile[] = readMigrationFiles({ migrationsFolder });
  const applied = appliedHashes(sqlite);
  checkHistory(applied, files);
  return files.length - applied.length;
}

/**
 * Applies pending migrations, one transaction each, and returns how many.
 * Compares the digest of every applied migration first, and the rows of the evidence tables before and after each.
 * Throws DatabaseNewerThanProgram, MigrationHistoryError or MigrationFailed; a migration that fails leaves nothing behind.
 */
export function migrate(sqlite: Database.Database, options: MigrateOptions): number {
  const files: MigrationFile[] = readMigrationFiles({ migrationsFolder: options.migrationsFolder });
  const applied = appliedHashes(sqlite);
  checkHistory(applied, files);
  const pending = files.slice(applied.length);
  if (pending.length === 0) return 0;
  if (applied.length > 0) options.backup();
  // SQLite ignores this pragma inside a transaction, and a table rebuild with it on would cascade into the children.
  sqlite.pragma('foreign_keys = OFF');
  try {
    sqlite.exec('CREATE TABLE IF NOT EXISTS migration (seq INTEGER PRIMARY KEY, hash TEXT NOT NULL, applied_at TEXT NOT NULL) STRICT');
    pending.forEach((file, i) => {
      applyWhole(sqlite, file, applied.length + i + 1, options.now().toISOString());
    });
  } finally {
    sqlite.pragma('foreign_keys = ON');
  }
  return pending.length;
}

import type { ReadDb } from '../handle.ts';
import type { Pace } from './part.ts';

/** What SQLite says against a table, or the whole file, in its own words, or null; and the first row of it that refers to one that is not there, in a sentence. */
export type FileFound = { readonly damage: string | null; readonly dangling: string | null };

/** So many faults are looked at: the search index may stand among them with one or two of its own, which is no damage of the records. */
const FAULTS_LOOKED_AT = 8;

/** An index over what stands in JSON makes SQLite stop at text that is none. */
function integrityOf(db: ReadDb, what: string): string | null {
  try {
    return db.all<{ integrity_check: string }>(`PRAGMA integrity_check(${what})`).map((row) => row.integrity_check).find((words) => words !== 'ok' && !/fts5/i.test(words)) ?? null;
  } catch (e) {
    if (e instanceof Error && 'code' in e && e.code === 'SQLITE_ERROR') return e.message;
    throw e;
  }
}

/**
 * SQLite's own check of a table and its references. `table` null: of everything in the file, its free pages and those that nothing uses as well.
 * `sound`: the table is known to be, and only its references are looked at.
 */
export async function filePiece(db: ReadDb, table: string | null, sound: boolean, pace: Pace): Promise<FileFound> {
  if (table === null) return { damage: integrityOf(db, String(FAULTS_LOOKED_AT)), dangling: null };
  const damage = sound ? null : integrityOf(db, `"${table}"`);
  await pace(1);
  const [dangling] = damage === null ? db.all<{ rowid: number; parent: string }>(`PRAGMA foreign_key_check("${table}")`) : [];
  await pace(0);
  return { damage, dangling: dangling === undefined ? null : `Row ${dangling.rowid} of ${table} refers to a row of ${dangling.parent} that is not there.` };
}

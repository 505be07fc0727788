import { expectedGuards, guardsNotInPlace } from '../guards.ts';
import type { ReadDb } from '../handle.ts';
import { faultyPart, soundPart, type Pace, type Part } from './part.ts';

/** Whether the guards of the evidence tables are in place, and were when the casebook was opened. */
export function verifyGuards(db: ReadDb, restoredAtOpening: readonly string[]): Part {
  const all = expectedGuards().length;
  const missing = guardsNotInPlace(db.all<{ name: string; sql: string }>(`SELECT name, sql FROM sqlite_master WHERE type = 'trigger'`));
  const [first] = missing;
  if (first !== undefined) return faultyPart('guards', all - missing.length, `The guard ${first} is not in place${missing.length > 1 ? `, nor are ${missing.length - 1} others` : ''}.`);
  const [restored] = restoredAtOpening;
  if (restored !== undefined) {
    return faultyPart('guards', all, `The guard ${restored} had been taken away and was put back when the casebook was opened: someone worked on the file from outside.`);
  }
  return soundPart('guards', all);
}

/** What SQLite says of one table. An index over what stands in JSON makes it stop at text that is none. */
function integrityOf(db: ReadDb, table: string): string {
  try {
    const [answer] = db.all<Record<string, string>>(`PRAGMA integrity_check("${table}")`);
    return answer ? Object.values(answer)[0]! : 'no answer';
  } catch (e) {
    if (e instanceof Error && 'code' in e && e.code === 'SQLITE_ERROR') return e.message;
    throw e;
  }
}

/** SQLite's own integrity check, table by table, and references that lead nowhere. */
export async function verifyDatabase(db: ReadDb, pace: Pace): Promise<Part> {
  // The tables of the search index are looked at as tables. What stands in them is made from the records, proves nothing, and is compared and made anew at opening.
  const tables = db.all<{ name: string }>(`SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND sql NOT LIKE 'CREATE VIRTUAL TABLE%' ORDER BY name`);
  let checked = 0;
  for (const { name } of tables) {
    const words = integrityOf(db, name);
    if (words !== 'ok') return faultyPart('database', checked, `The table ${name} is damaged: ${words}.`);
    checked += 1;
    await pace(checked);
  }
  const [dangling] = db.all<{ table: string; rowid: number; parent: string }>('PRAGMA foreign_key_check');
  if (dangling) return faultyPart('database', checked, `Row ${dangling.rowid} of ${dangling.table} refers to a row of ${dangling.parent} that is not there.`);
  return soundPart('database', checked);
}

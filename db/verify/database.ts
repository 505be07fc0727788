import { expectedGuards, guardsNotInPlace } from '../guards.ts';
import type { ReadDb } from '../handle.ts';
import { faultyPart, soundPart, type Part } from './part.ts';
import { foundInOrder, type Runner } from './pieces.ts';

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

// The tables of the search index are looked at as tables. What stands in them is made from the records, proves nothing, and is compared and made anew at opening.
const TABLES = `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND sql NOT LIKE 'CREATE VIRTUAL TABLE%' ORDER BY name`;

/** SQLite's own checks table by table; with `wholeFile` of everything in one go, and by tables only to name what is wrong. */
export async function verifyDatabase(db: ReadDb, wholeFile: boolean, runner: Runner): Promise<Part> {
  const elsewhere = wholeFile ? (await runner.run({ kind: 'file', table: null, sound: false })).damage : null;
  const sound = wholeFile && elsewhere === null;
  const tables = db.all<{ name: string }>(TABLES).map(({ name }) => name);
  let checked = 0;
  let firstDangling: string | null = null;
  for await (const { damage, dangling } of foundInOrder(runner, tables.map((table) => ({ kind: 'file', table, sound }) as const))) {
    if (damage !== null) return faultyPart('database', checked, `The table ${tables[checked]!} is damaged: ${damage}.`);
    firstDangling ??= dangling;
    checked += 1;
  }
  if (elsewhere !== null) return faultyPart('database', checked, `The file is damaged: ${elsewhere}.`);
  return firstDangling === null ? soundPart('database', checked) : faultyPart('database', checked, firstDangling);
}

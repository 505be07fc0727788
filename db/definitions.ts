import BetterSqlite from 'better-sqlite3';
import type Database from 'better-sqlite3';
import { migrate } from './migrate.ts';
import { teachFold } from './open-reader.ts';

/** What SQLite keeps of a table, an index or a view: the words it was made with. */
export type Definition = { readonly type: string; readonly name: string; readonly sql: string | null };

// SQLite's own tables (sequences, statistics) come and go with its use; triggers are guards, which are looked at on their own.
const DEFINITIONS = `SELECT type, name, sql FROM sqlite_master WHERE type <> 'trigger' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY type, name`;

const definitionsIn = (sqlite: Database.Database): Definition[] => sqlite.prepare(DEFINITIONS).all() as Definition[];

const known = new Map<string, readonly Definition[]>();

/**
 * Every definition of a casebook that nobody touched: made in memory by the same migrations, once in the life of the program. The first time takes
 * some fifty milliseconds, which nobody notices while a file is opened and everybody would at a window that works.
 */
export function expectedDefinitions(migrationsFolder: string): readonly Definition[] {
  const made = known.get(migrationsFolder) ?? makeDefinitions(migrationsFolder);
  known.set(migrationsFolder, made);
  return made;
}

function makeDefinitions(migrationsFolder: string): Definition[] {
  const made = new BetterSqlite(':memory:');
  try {
    teachFold(made);
    migrate(made, { migrationsFolder, now: () => new Date(0), backup: () => {} });
    return definitionsIn(made);
  } finally {
    made.close();
  }
}

/**
 * What is defined in an open casebook otherwise than the program defines it, a sentence for each: a rule of a table, an index that keeps numbers
 * from being given out twice, a view in a table's place.
 */
export function strangeDefinitions(sqlite: Database.Database, expected: readonly Definition[]): string[] {
  const present = definitionsIn(sqlite);
  const there = new Map(present.map((one) => [one.name, one]));
  const ours = new Set(expected.map(({ name }) => name));
  const missing = expected.filter(({ name }) => !there.has(name)).map(({ type, name }) => `The ${type} ${name} is no longer there.`);
  const altered = expected.filter(({ type, name, sql }) => { const found = there.get(name); return found !== undefined && (found.type !== type || found.sql !== sql); })
    .map(({ type, name }) => `The ${type} ${name} is not defined as Culet defines it.`);
  const foreign = present.filter(({ name }) => !ours.has(name)).map(({ type, name }) => `The ${type} ${name} is not Culet’s.`);
  return [...missing, ...altered, ...foreign];
}

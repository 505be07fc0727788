import type { ReadDb } from '../handle.ts';
import { VOUCHED_TABLES } from '../ledger/vouched-tables.ts';
import type { Bounds } from './ranges.ts';

/** What has to be known of a file before the work on it is cut into pieces. Plain data. */
export type Layout = {
  /** Lowest and highest row number of every table that is read in pieces. */
  readonly bounds: Readonly<Record<string, Bounds>>;
  /** Highest number that each ledger ever gave out. */
  readonly givenOut: { readonly custody_entry: number; readonly audit_entry: number };
  /** Tables whose pages SQLite checks. */
  readonly tables: readonly string[];
};

// The tables of the search index are looked at as tables. What stands in them is made from the records, proves nothing, and is compared and made anew at opening.
const TABLES = `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND sql NOT LIKE 'CREATE VIRTUAL TABLE%' ORDER BY name`;

/** SQLite remembers the highest number an AUTOINCREMENT table ever gave out. */
const givenOut = (db: ReadDb, table: string): number => db.get<{ seq: number }>('SELECT seq FROM sqlite_sequence WHERE name = ?', [table])?.seq ?? 0;

const boundsOf = (db: ReadDb, table: string): Bounds => db.get<Bounds>(`SELECT (SELECT min(rowid) FROM ${table}) AS low, (SELECT max(rowid) FROM ${table}) AS high`)!;

/** Read once, before everything else. */
export function layoutPiece(db: ReadDb): Layout {
  const inPieces = new Set(['custody_entry', 'audit_entry', 'raw_record', 'spectrum', 'report', ...VOUCHED_TABLES.map(({ table }) => table)]);
  return {
    bounds: Object.fromEntries([...inPieces].map((table) => [table, boundsOf(db, table)])),
    givenOut: { custody_entry: givenOut(db, 'custody_entry'), audit_entry: givenOut(db, 'audit_entry') },
    tables: db.all<{ name: string }>(TABLES).map(({ name }) => name),
  };
}

const COUNT = `SELECT (SELECT count(*) FROM custody_entry) + (SELECT count(*) FROM audit_entry) + (SELECT count(*) FROM raw_record)
  + (SELECT count(*) FROM spectrum) + (SELECT count(*) FROM report) + (SELECT count(*) FROM sealed_bundle)
  + ${VOUCHED_TABLES.map(({ table }) => `(SELECT count(*) FROM ${table})`).join(' + ')} AS n`;

/** How many entries, records and rows there are to look at. */
export const countPiece = (db: ReadDb): number => db.get<{ n: number }>(COUNT)!.n;

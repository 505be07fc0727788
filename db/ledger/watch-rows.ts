import type Database from 'better-sqlite3';
import { VOUCHED_TABLES, type VouchedTable } from './vouched-tables.ts';

export type WrittenRow = { readonly table: VouchedTable; readonly id: string | number };

/** The rows that a transaction has written and no entry of the audit ledger vouches for yet. */
export type WrittenRows = {
  /** Hands them over, in the order they were first written, and forgets them. */
  take(): WrittenRow[];
  /** Tables of those that nobody has taken. */
  tablesLeft(): string[];
  /** Every row written since the transaction began, taken or not: table to ids. */
  all(): ReadonlyMap<string, readonly (string | number)[]>;
  forget(): void;
};

const keyOf = (table: string, id: string | number): string => `${table}/${id}`;

/**
 * Notes every row that this connection writes into a table that is vouched for. The triggers belong to the connection, not to the file:
 * a store can't forget to name what it changed.
 */
export function watchRows(sqlite: Database.Database): WrittenRows {
  const written = new Map<string, WrittenRow>();
  const all = new Map<string, Set<string | number>>();
  const tables = new Map(VOUCHED_TABLES.map((table) => [table.table, table]));
  if (!sqlite.readonly) {
    sqlite.function('note_written', (name, id) => {
      const table = tables.get(String(name));
      if (table && (typeof id === 'string' || typeof id === 'number')) {
        written.set(keyOf(table.table, id), { table, id });
        all.set(table.table, (all.get(table.table) ?? new Set()).add(id));
      }
      return null;
    });
    const present = new Set((sqlite.prepare(`SELECT name FROM sqlite_master WHERE type = 'table'`).all() as { name: string }[]).map((row) => row.name));
    for (const name of [...tables.keys()].filter((table) => present.has(table))) {
      for (const event of ['INSERT', 'UPDATE']) {
        sqlite.exec(`CREATE TEMP TRIGGER IF NOT EXISTS ${name}_noted_${event.toLowerCase()} AFTER ${event} ON main.${name} BEGIN SELECT note_written('${name}', NEW.id); END`);
      }
    }
  }
  return {
    take() {
      const rows = [...written.values()];
      written.clear();
      return rows;
    },
    tablesLeft: () => [...new Set([...written.values()].map((row) => row.table.table))],
    all: () => new Map([...all].map(([table, ids]) => [table, [...ids]])),
    forget() {
      written.clear();
      all.clear();
    },
  };
}

import type { ReadDb } from '../handle.ts';
import { rowDigester, type StoredValue } from '../ledger/row-digest.ts';
import { VOUCHED_TABLES } from '../ledger/vouched-tables.ts';
import { RowPacker, type PackedRows } from './packed-rows.ts';
import type { Pace } from './part.ts';
import type { Range } from './ranges.ts';

/** Rows of a table in the order they were written, as they stand now. */
export type RowsFound = { readonly table: string; readonly rows: PackedRows };

/** A row as it is called in a sentence, or null where nothing more is known of it. */
export function namePiece(db: ReadDb, table: string, id: string): string | null {
  const known = VOUCHED_TABLES.find((one) => one.table === table)!;
  return db.get<{ name: string | null }>(`SELECT ${known.name} AS name FROM ${table} t WHERE t.id = ?`, [id])?.name ?? null;
}

/** Rows read between two breaths. */
const SLICE = 100;

type Row = readonly [number: number, id: string | number, ...StoredValue[]];

export async function rowsPiece(db: ReadDb, table: string, range: Range, pace: Pace): Promise<RowsFound> {
  const { columns } = VOUCHED_TABLES.find((one) => one.table === table)!;
  const digester = rowDigester(columns);
  const found = new RowPacker();
  let { after } = range;
  for (;;) {
    const rows = db.values<Row>(`SELECT rowid, id, ${digester.columns.join(', ')} FROM ${table} WHERE rowid > ? AND rowid <= ? ORDER BY rowid LIMIT ${SLICE}`, [after, range.upTo]);
    for (const row of rows) {
      found.add(`${table}/${row[1]}`, digester.digest(row, 2), row[0]);
      after = row[0];
    }
    await pace(rows.length);
    if (rows.length < SLICE) return { table, rows: found.packed() };
  }
}

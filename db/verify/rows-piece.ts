import type { ReadDb } from '../handle.ts';
import { rowDigester, type StoredValue } from '../ledger/row-digest.ts';
import { VOUCHED_TABLES } from '../ledger/vouched-tables.ts';
import type { Pace } from './part.ts';
import type { Range } from './ranges.ts';

/** Rows of a table in the order they were written: number, key (“table/id”) and digest as they stand now. */
export type RowsFound = { readonly table: string; readonly numbers: number[]; readonly keys: string[]; readonly digests: string[] };

/** Rows read between two breaths. */
const SLICE = 100;

type Row = readonly [number: number, id: string | number, ...StoredValue[]];

export async function rowsPiece(db: ReadDb, table: string, range: Range, pace: Pace): Promise<RowsFound> {
  const { columns } = VOUCHED_TABLES.find((one) => one.table === table)!;
  const digester = rowDigester(columns);
  const found: RowsFound = { table, numbers: [], keys: [], digests: [] };
  let { after } = range;
  for (;;) {
    const rows = db.values<Row>(`SELECT rowid, id, ${digester.columns.join(', ')} FROM ${table} WHERE rowid > ? AND rowid <= ? ORDER BY rowid LIMIT ${SLICE}`, [after, range.upTo]);
    for (const row of rows) {
      found.numbers.push(row[0]);
      found.keys.push(`${table}/${row[1]}`);
      found.digests.push(digester.digest(row, 2));
      after = row[0];
    }
    await pace(rows.length);
    if (rows.length < SLICE) return found;
  }
}

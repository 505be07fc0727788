import type { WriteTx } from '../handle.ts';
import { rowDigest, type StoredValue } from './row-digest.ts';
import { VOUCHED_TABLES } from './vouched-tables.ts';

/** What an entry of the audit ledger says of the rows written since the entry before it. */
export type Voucher = {
  /** "table/id" to the digest of the row as it is stored. */
  readonly rows?: Readonly<Record<string, string>>;
  /** Only in the first entry that vouches, where older rows are there: of each table the highest rowid that no entry vouches for. */
  readonly unvouched?: Readonly<Record<string, number>>;
};

const VOUCHES = `CASE WHEN json_valid(content) THEN json_type(content, '$.rows') = 'object' ELSE 0 END`;

/** An entry that vouches, as it was last seen through a connection: looked at again, since a transaction may have been undone. */
const lastSeen = new WeakMap<WriteTx, number>();

function vouchedBefore(tx: WriteTx): boolean {
  const seen = lastSeen.get(tx);
  if (seen !== undefined && tx.get(`SELECT 1 AS one FROM audit_entry WHERE seq = ? AND ${VOUCHES}`, [seen]) !== undefined) return true;
  const found = tx.get<{ seq: number }>(`SELECT seq FROM audit_entry WHERE ${VOUCHES} ORDER BY seq DESC LIMIT 1`);
  if (found) lastSeen.set(tx, found.seq);
  return found !== undefined;
}

/** Rows that were there before anything was vouched for: written by an earlier version of the program. */
function olderRows(tx: WriteTx, fresh: ReadonlySet<string>): Record<string, number> {
  const highest: Record<string, number> = {};
  for (const { table } of VOUCHED_TABLES) {
    const row = tx.get<{ n: number | null }>(
      `SELECT max(rowid) AS n FROM ${table} WHERE '${table}/' || id NOT IN (SELECT value FROM json_each(@fresh))`, { fresh: JSON.stringify([...fresh]) });
    if (row?.n) highest[table] = row.n;
  }
  return highest;
}

/** Takes the rows that the transaction wrote since the last entry, and says what each of them is. Empty where it wrote none. */
export function vouch(tx: WriteTx): Voucher {
  const written = tx.written.take();
  if (written.length === 0) return {};
  const rows: Record<string, string> = {};
  for (const { table, id } of written) {
    const row = tx.get<Record<string, StoredValue>>(`SELECT ${table.columns.join(', ')} FROM ${table.table} WHERE id = ?`, [id]);
    if (row) rows[`${table.table}/${id}`] = rowDigest(row, table.columns);
  }
  const unvouched = vouchedBefore(tx) ? {} : olderRows(tx, new Set(Object.keys(rows)));
  return { rows, ...(Object.keys(unvouched).length > 0 && { unvouched }) };
}

import type { ReadDb } from '../handle.ts';
import { rowDigest, type StoredValue } from '../ledger/row-digest.ts';
import { VOUCHED_TABLES, type VouchedTable } from '../ledger/vouched-tables.ts';
import type { Vouched } from './ledgers.ts';
import { faultyPart, soundPart, type Pace, type Part } from './part.ts';

const PART = 'facts and findings';

/** Rows read between two breaths. */
const SLICE = 100;

type Row = Record<string, StoredValue> & { row_number: number; row_id: string | number };

/** How a row is called in a sentence that begins with it. */
function nameOf(db: ReadDb, table: VouchedTable, id: string | number): string {
  const name = db.get<{ name: string | null }>(`SELECT ${table.name} AS name FROM ${table.table} t WHERE t.id = ?`, [id])?.name;
  return `The ${name ?? `${table.noun} ${id}`}`;
}

/** What does not fit a row, or null; 'older' where it was written before entries vouched for rows. */
function judge(db: ReadDb, table: VouchedTable, row: Row, vouched: Vouched, seen: Seen): string | null {
  const known = vouched.rows.get(`${table.table}/${row.row_id}`);
  if (known === undefined) {
    const isOlder = vouched.older === null || row.row_number <= (vouched.older.get(table.table) ?? 0);
    return isOlder ? 'older' : `${nameOf(db, table, row.row_id)} is not named in the audit ledger: it was put in from outside.`;
  }
  seen.add(known);
  if (rowDigest(row, table.columns) === known.digest) return null;
  return `${nameOf(db, table, row.row_id)} was changed behind the program’s back: it is not what entry ${known.seq} of the audit ledger vouches for.`;
}

/** The first vouched row that is gone. */
function gone(seen: Seen, vouched: Vouched): string | null {
  if (seen.size === vouched.rows.size) return null;
  for (const [key, voucher] of vouched.rows) {
    if (seen.has(voucher)) continue;
    const { seq } = voucher;
    const [name, id] = [key.slice(0, key.indexOf('/')), key.slice(key.indexOf('/') + 1)];
    const table = VOUCHED_TABLES.find((one) => one.table === name);
    if (table !== undefined) return `A ${table.noun} that entry ${seq} of the audit ledger vouches for is no longer there (${id}).`;
  }
  return null;
}

type Voucher = { readonly digest: string; readonly seq: number };
/** Vouchers whose row is there. */
type Seen = Set<Voucher>;

type Tally = { checked: number; older: number };

async function verifyTable(db: ReadDb, table: VouchedTable, vouched: Vouched, tally: Tally, seen: Seen, pace: Pace): Promise<string | null> {
  let after = Number.MIN_SAFE_INTEGER;
  for (;;) {
    const rows = db.all<Row>(
      `SELECT rowid AS row_number, id AS row_id, ${table.columns.join(', ')} FROM ${table.table} WHERE rowid > ? ORDER BY rowid LIMIT ${SLICE}`, [after]);
    for (const row of rows) {
      const fault = judge(db, table, row, vouched, seen);
      if (fault === 'older') tally.older += 1;
      else if (fault !== null) return fault;
      else tally.checked += 1;
      after = row.row_number;
    }
    await pace(tally.checked + tally.older);
    if (rows.length < SLICE) return null;
  }
}

const olderNote = (n: number): string =>
  `${n === 1 ? 'One record was' : `${n.toLocaleString('en')} records were`} written before the audit ledger vouched for records: not vouched for, and so not compared.`;

/**
 * Compares every row of the tables that hold records with the newest digest the audit ledger vouches for, and names the first that was
 * changed, is gone, or was put in from outside.
 */
export async function verifyRows(db: ReadDb, vouched: Vouched, pace: Pace): Promise<Part> {
  if (!vouched.complete) return { ...soundPart(PART, 0), note: 'Not compared: the audit ledger, which vouches for them, does not hold.' };
  const tally: Tally = { checked: 0, older: 0 };
  const seen: Seen = new Set();
  for (const table of VOUCHED_TABLES) {
    const fault = await verifyTable(db, table, vouched, tally, seen, pace);
    if (fault !== null) return faultyPart(PART, tally.checked, fault);
  }
  const missing = gone(seen, vouched);
  if (missing !== null) return faultyPart(PART, tally.checked, missing);
  return tally.older === 0 ? soundPart(PART, tally.checked) : { ...soundPart(PART, tally.checked), note: olderNote(tally.older) };
}

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
function judge(db: ReadDb, table: VouchedTable, row: Row, vouched: Vouched): string | null {
  const known = vouched.rows.get(`${table.table}/${row.row_id}`);
  if (known === undefined) {
    const isOlder = vouched.older === null || row.row_number <= (vouched.older.get(table.table) ?? 0);
    return isOlder ? 'older' : `${nameOf(db, table, row.row_id)} is not named in the audit ledger: it was put in from outside.`;
  }
  if (rowDigest(row, table.columns) === known.digest) return null;
  return `${nameOf(db, table, row.row_id)} was changed behind the program’s back: it is not what entry ${known.seq} of the audit ledger vouches for.`;
}

/** The first vouched row of a table that is gone. */
function gone(table: VouchedTable, seen: ReadonlySet<string>, vouched: Vouched): string | null {
  for (const [key, { seq }] of vouched.rows) {
    if (key.startsWith(`${table.table}/`) && !seen.has(key)) {
      return `A ${table.noun} that entry ${seq} of the audit ledger vouches for is no longer there (${key.slice(table.table.length + 1)}).`;
    }
  }
  return null;
}

type Tally = { checked: number; older: number };

async function verifyTable(db: ReadDb, table: VouchedTable, vouched: Vouched, tally: Tally, pace: Pace): Promise<string | null> {
  const seen = new Set<string>();
  let after = Number.MIN_SAFE_INTEGER;
  for (;;) {
    const rows = db.all<Row>(
      `SELECT rowid AS row_number, id AS row_id, ${table.columns.join(', ')} FROM ${table.table} WHERE rowid > ? ORDER BY rowid LIMIT ${SLICE}`, [after]);
    for (const row of rows) {
      const fault = judge(db, table, row, vouched);
      if (fault === 'older') tally.older += 1;
      else if (fault !== null) return fault;
      else tally.checked += 1;
      seen.add(`${table.table}/${row.row_id}`);
      await pace(tally.checked + tally.older);
      after = row.row_number;
    }
    if (rows.length < SLICE) return gone(table, seen, vouched);
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
  for (const table of VOUCHED_TABLES) {
    const fault = await verifyTable(db, table, vouched, tally, pace);
    if (fault !== null) return faultyPart(PART, tally.checked, fault);
  }
  return tally.older === 0 ? soundPart(PART, tally.checked) : { ...soundPart(PART, tally.checked), note: olderNote(tally.older) };
}

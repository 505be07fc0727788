import type { JsonValue } from '../../app/custody/canonical-json.ts';
import { CHAIN_START, verifyChain, verifyEnd, type ChainState, type KeptEntry } from '../../app/custody/verify-chain.ts';
import type { ReadDb } from '../handle.ts';
import { sha256 } from '../ledger/sha256.ts';
import { faultyPart, soundPart, type Pace, type Part } from './part.ts';

/** Digests that the audit ledger vouches for: by id of the record, and of reports by "number/revision". */
export type Vouched = {
  /** False where the ledger itself does not hold: then nothing follows from a digest it does not name. */
  complete: boolean;
  readonly byId: Map<string, string>; readonly reports: Map<string, { model: string; pdf: string }>;
  /** Of each row, "table/id", its newest digest and the entry that says so. */
  readonly rows: Map<string, { digest: string; seq: number }>;
  /** Highest rowid of each table that was there before entries vouched for rows; null while none does. */
  older: ReadonlyMap<string, number> | null;
};

type CustodyRow = { seq: number; at: string; person_id: string; case_id: string; item_id: string; content: string; previous: string; hash: string };
type AuditRow = { seq: number; at: string; person_id: string | null; operation: string; subject: string; case_id: string | null; content: string; previous: string; hash: string };

/** Entries hashed between two breaths: about ten milliseconds. */
const SLICE = 250;

const custodyKept = (row: CustodyRow): KeptEntry => ({
  content: row.content, previous: row.previous, hash: row.hash,
  statement: { seq: row.seq, at: row.at, person: row.person_id, case: row.case_id, item: row.item_id },
});

const auditKept = (row: AuditRow): KeptEntry => ({
  content: row.content, previous: row.previous, hash: row.hash,
  statement: { seq: row.seq, at: row.at, person: row.person_id, operation: row.operation, subject: row.subject, case: row.case_id },
});

async function walk<Row extends { seq: number }>(db: ReadDb, table: string, kept: (row: Row) => KeptEntry, pace: Pace, each: (row: Row, content: JsonValue | undefined) => void): Promise<ChainState> {
  let state = CHAIN_START;
  // What the chain parsed, for whoever reads the entry after it.
  const contents = new Map<number, JsonValue>();
  // From below the first possible number, so that an entry numbered 0 or less is seen.
  let after = Number.MIN_SAFE_INTEGER;
  for (;;) {
    const rows = db.all<Row>(`SELECT * FROM ${table} WHERE seq > ? ORDER BY seq LIMIT ${SLICE}`, [after]);
    contents.clear();
    state = verifyChain(rows.map(kept), state, sha256, (seq, content) => { contents.set(seq, content); });
    for (const row of rows) each(row, contents.get(row.seq));
    const last = rows[rows.length - 1];
    if (!last || state.fault) break;
    after = last.seq;
    await pace(state.checked);
  }
  // SQLite remembers the highest number an AUTOINCREMENT table ever gave out.
  const given = db.get<{ seq: number }>('SELECT seq FROM sqlite_sequence WHERE name = ?', [table])?.seq ?? 0;
  return verifyEnd(state, given);
}

function partOf(part: Part['part'], state: ChainState): Part {
  return state.fault ? faultyPart(part, state.checked, state.fault.sentence, state.head) : soundPart(part, state.checked, state.head);
}

type RowVoucher = { rows?: Record<string, string>; unvouched?: Record<string, number> };

function noteRows(seq: number, { rows, unvouched }: RowVoucher, vouched: Vouched): void {
  if (rows === undefined) return;
  vouched.older ??= new Map(Object.entries(unvouched ?? {}));
  for (const [key, digest] of Object.entries(rows)) vouched.rows.set(key, { digest, seq });
}

/** Operations whose entries hold the digests of an issued report. */
const ISSUES: ReadonlySet<string> = new Set(['reports.issue', 'reportDrafts.issue']);

type AuditContent = { digests?: Record<string, unknown>; number?: unknown; revision?: unknown; model?: unknown; pdf?: unknown } & RowVoucher;

/** `read` is undefined where the text is no JSON or stands after a fault: the chain itself names such an entry. */
function noteDigests(row: AuditRow, read: JsonValue | undefined, vouched: Vouched): void {
  if (read === null || typeof read !== 'object') return;
  const content = read as AuditContent;
  noteRows(row.seq, content, vouched);
  for (const [id, digest] of Object.entries(content.digests ?? {})) {
    if (typeof digest === 'string') vouched.byId.set(id, digest);
  }
  if (ISSUES.has(row.operation) && typeof content.model === 'string' && typeof content.pdf === 'string') {
    vouched.reports.set(`${String(content.number)}/${String(content.revision)}`, { model: content.model, pdf: content.pdf });
  }
}

/** Heads of the custody ledger that the audit ledger wrote down: entry number to digest. */
type CustodyHeads = Map<number, string>;

function noteCustodyHead(row: AuditRow, heads: CustodyHeads): void {
  const match = /"custody":\{"hash":"([0-9a-f]{64})","seq":(\d+)\}/.exec(row.content);
  if (match) heads.set(Number(match[2]), match[1]!);
}

/** What the audit ledger says against a custody chain that holds in itself, or null. */
function contradiction(foreign: number | null, heads: CustodyHeads): string | null {
  if (foreign !== null) return `Entry ${foreign} is not the one that the audit ledger names: the ledger was written anew.`;
  return heads.size > 0 ? `Entry ${Math.min(...heads.keys())} is named in the audit ledger and is no longer there.` : null;
}

/** Recomputes both ledgers; returns their parts and what the audit ledger vouches for. */
export async function verifyLedgers(db: ReadDb, pace: Pace): Promise<{ parts: Part[]; vouched: Vouched }> {
  const vouched: Vouched = { complete: false, byId: new Map(), reports: new Map(), rows: new Map(), older: null };
  const heads: CustodyHeads = new Map();
  const audit = await walk<AuditRow>(db, 'audit_entry', auditKept, pace, (row, content) => {
    noteDigests(row, content, vouched);
    noteCustodyHead(row, heads);
  });
  vouched.complete = audit.fault === null;
  const foreign: number[] = [];
  const custody = await walk<CustodyRow>(db, 'custody_entry', custodyKept, pace, (row) => {
    const known = heads.get(row.seq);
    if (known !== undefined && known !== row.hash) foreign.push(row.seq);
    heads.delete(row.seq);
  });
  const against = custody.fault === null ? contradiction(foreign[0] ?? null, heads) : null;
  const custodyPart = against === null ? partOf('custody ledger', custody) : faultyPart('custody ledger', custody.checked, against, custody.head);
  return { parts: [custodyPart, partOf('audit ledger', audit)], vouched };
}

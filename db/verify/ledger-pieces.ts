import type { EntryReader } from '../../app/custody/entry-reader.ts';
import type { AuditStatement } from '../../app/custody/chain.ts';
import { CHAIN_START, verifyChain, type ChainState, type EachContent, type KeptEntry } from '../../app/custody/verify-chain.ts';
import type { ReadDb } from '../handle.ts';
import { sha256 } from '../ledger/sha256.ts';
import { RowPacker, type PackedRows } from './packed-rows.ts';
import type { Pace } from './part.ts';
import type { Range } from './ranges.ts';

/** Entry numbers and what stands for each, in the same order: plain lists cross a thread border cheaply. */
export type Heads = { readonly seqs: number[]; readonly hashes: string[] };

/** What a piece of the audit ledger says, up to the first entry that does not fit. `chain.checked` counts the entries of the piece. */
export type AuditFound = {
  readonly chain: ChainState;
  /** What entries vouch for of the rows, numbered by the entry. */
  readonly rows: PackedRows;
  /** Of the first entry here that vouches for rows: highest row numbers that were there before; null where none vouches. */
  older: Readonly<Record<string, number>> | null;
  readonly byId: { readonly ids: string[]; readonly digests: string[] };
  readonly reports: { readonly keys: string[]; readonly models: string[]; readonly pdfs: string[] };
  /** Heads of the custody ledger that were written down. */
  readonly heads: Heads;
};

type Gathered = Omit<AuditFound, 'chain' | 'rows'>;

/** `foreign`: the first entry that is not the one the audit ledger names; `met`: named entries that are there. */
export type CustodyFound = { readonly chain: ChainState; readonly foreign: number | null; readonly met: number[] };

/** Entries hashed between two breaths: about ten milliseconds. */
const SLICE = 250;

type CustodyRow = readonly [seq: number, at: string, person: string, of: string, item: string, content: string, previous: string, hash: string];
const CUSTODY_COLUMNS = 'seq, at, person_id, case_id, item_id, content, previous, hash';
type AuditRow = readonly [seq: number, at: string, person: string | null, operation: string, subject: string, of: string | null, content: string, previous: string, hash: string];
const AUDIT_COLUMNS = 'seq, at, person_id, operation, subject, case_id, content, previous, hash';

const custodyKept = ([seq, at, person, of, item, content, previous, hash]: CustodyRow): KeptEntry => ({ content, previous, hash, statement: { seq, at, person, case: of, item } });
const auditKept = ([seq, at, person, operation, subject, of, content, previous, hash]: AuditRow): KeptEntry => ({ content, previous, hash, statement: { seq, at, person, operation, subject, case: of } });

/** Where a chain stands before a piece of it: as the entry before says, which the piece before that checks. */
function stateBefore(db: ReadDb, table: string, { after }: Range): ChainState {
  const before = db.get<{ seq: number; hash: string }>(`SELECT seq, hash FROM ${table} WHERE seq <= ? ORDER BY seq DESC LIMIT 1`, [after]);
  return before === undefined ? CHAIN_START : { checked: 0, lastSeq: before.seq, head: before.hash, fault: null };
}

type Walked<Row> = {
  readonly table: string; readonly columns: string;
  kept(row: Row): KeptEntry;
  /** Hears of every entry that is there, also behind a fault in the same slice. */
  each(row: Row): void;
  content?: EachContent;
};

async function walk<Row extends readonly [number, ...unknown[]]>(db: ReadDb, { table, columns, kept, each, content }: Walked<Row>, range: Range, pace: Pace): Promise<ChainState> {
  let state = stateBefore(db, table, range);
  let { after } = range;
  for (;;) {
    const rows = db.values<Row>(`SELECT ${columns} FROM ${table} WHERE seq > ? AND seq <= ? ORDER BY seq LIMIT ${SLICE}`, [after, range.upTo]);
    state = verifyChain(rows.map(kept), state, sha256, content);
    rows.forEach(each);
    const last = rows[rows.length - 1];
    if (!last || state.fault) return state;
    after = last[0];
    await pace(rows.length);
  }
}

/** Operations whose entries hold the digests of an issued report. */
const ISSUES: ReadonlySet<string> = new Set(['reports.issue', 'reportDrafts.issue']);

function noteVouchers(seq: number, operation: string, content: EntryReader, found: Gathered, vouchers: RowPacker): void {
  const rows = content.pairs('rows');
  if (rows.length > 0) {
    found.older ??= (content.member('unvouched') ?? {}) as Record<string, number>;
    for (let i = 0; i < rows.length; i += 2) {
      vouchers.add(rows[i] as string, rows[i + 1], seq);
    }
  }
  const digests = content.pairs('digests');
  for (let i = 0; i < digests.length; i += 2) {
    if (typeof digests[i + 1] !== 'string') continue;
    found.byId.ids.push(digests[i] as string);
    found.byId.digests.push(digests[i + 1] as string);
  }
  if (!ISSUES.has(operation)) return;
  const [model, pdf] = [content.member('model'), content.member('pdf')];
  if (typeof model !== 'string' || typeof pdf !== 'string') return;
  found.reports.keys.push(`${String(content.member('number'))}/${String(content.member('revision'))}`);
  found.reports.models.push(model);
  found.reports.pdfs.push(pdf);
}

function noteCustodyHead(content: string, heads: Heads): void {
  const match = /"custody":\{"hash":"([0-9a-f]{64})","seq":(\d+)\}/.exec(content);
  if (!match) return;
  heads.seqs.push(Number(match[2]));
  heads.hashes.push(match[1]!);
}

/** Recomputes a piece of the audit ledger and gathers what it vouches for. */
export async function auditPiece(db: ReadDb, range: Range, pace: Pace): Promise<AuditFound> {
  const found: Gathered = { older: null, byId: { ids: [], digests: [] }, reports: { keys: [], models: [], pdfs: [] }, heads: { seqs: [], hashes: [] } };
  const vouchers = new RowPacker();
  const chain = await walk<AuditRow>(db, {
    table: 'audit_entry', columns: AUDIT_COLUMNS, kept: auditKept,
    each: (row) => { noteCustodyHead(row[6], found.heads); },
    content: ({ statement }, content) => { noteVouchers(statement.seq, (statement as AuditStatement).operation, content, found, vouchers); },
  }, range, pace);
  return { ...found, chain, rows: vouchers.packed() };
}

/** Recomputes a piece of the custody ledger, and compares it with the heads of it that the audit ledger wrote down. */
export async function custodyPiece(db: ReadDb, range: Range, { seqs, hashes }: Heads, pace: Pace): Promise<CustodyFound> {
  const known = new Map(seqs.map((seq, i) => [seq, hashes[i]!]));
  let foreign: number | null = null;
  const met: number[] = [];
  const chain = await walk<CustodyRow>(db, {
    table: 'custody_entry', columns: CUSTODY_COLUMNS, kept: custodyKept,
    each: (row) => {
      const [seq] = row;
      const named = known.get(seq);
      if (named === undefined) return;
      if (named !== row[7]) foreign ??= seq;
      met.push(seq);
    },
  }, range, pace);
  return { chain, foreign, met };
}

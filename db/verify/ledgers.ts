import { CHAIN_START, verifyEnd, type ChainState } from '../../app/custody/verify-chain.ts';
import type { Layout } from './layout.ts';
import type { AuditFound, Heads } from './ledger-pieces.ts';
import { faultyPart, soundPart, type Part } from './part.ts';
import { foundInOrder, type Found, type Piece, type Runner } from './pieces.ts';
import { rangesOf, type Range } from './ranges.ts';
import { RowVouchers } from './row-vouchers.ts';

/** Digests that the audit ledger vouches for: by id of the record, and of reports by "number/revision". */
export type Vouched = {
  /** False where the ledger itself does not hold: then nothing follows from a digest it does not name. */
  complete: boolean;
  readonly byId: Map<string, string>; readonly reports: Map<string, { model: string; pdf: string }>;
  readonly rows: RowVouchers;
  /** Highest rowid of each table that was there before entries vouched for rows; null while none does. */
  older: ReadonlyMap<string, number> | null;
};

/** Heads of the custody ledger that the audit ledger wrote down: entry number to digest. */
type CustodyHeads = Map<number, string>;

/** Joins the chain so far with its next piece, which began where the former ended. */
const joined = (before: ChainState, piece: ChainState): ChainState => ({ ...piece, checked: before.checked + piece.checked });

function gather(found: AuditFound, vouched: Vouched, heads: CustodyHeads): void {
  const { rows, byId, reports, older } = found;
  if (older !== null) vouched.older ??= new Map(Object.entries(older));
  vouched.rows.note(rows);
  for (let i = 0; i < byId.ids.length; i++) vouched.byId.set(byId.ids[i]!, byId.digests[i]!);
  for (let i = 0; i < reports.keys.length; i++) vouched.reports.set(reports.keys[i]!, { model: reports.models[i]!, pdf: reports.pdfs[i]! });
  for (let i = 0; i < found.heads.seqs.length; i++) heads.set(found.heads.seqs[i]!, found.heads.hashes[i]!);
}

type ChainPiece = Extract<Piece, { kind: 'audit' | 'custody' }>;

/** Pieces in their order, up to the first that holds a fault. */
async function walkChain<P extends ChainPiece>(runner: Runner, pieces: readonly P[], each: (found: Found<P>) => void): Promise<ChainState> {
  let state = CHAIN_START;
  for await (const found of foundInOrder(runner, pieces)) {
    each(found);
    state = joined(state, found.chain);
    if (state.fault) break;
  }
  return state;
}

function partOf(part: Part['part'], state: ChainState): Part {
  return state.fault ? faultyPart(part, state.checked, state.fault.sentence, state.head) : soundPart(part, state.checked, state.head);
}

export type AuditOutcome = { readonly part: Part; readonly vouched: Vouched; readonly heads: CustodyHeads };

/** Recomputes the audit ledger, and says what it vouches for. */
export async function verifyAudit({ bounds, givenOut }: Layout, runner: Runner): Promise<AuditOutcome> {
  const vouched: Vouched = { complete: false, byId: new Map(), reports: new Map(), rows: new RowVouchers(), older: null };
  const heads: CustodyHeads = new Map();
  const pieces = rangesOf(bounds['audit_entry']!).map((range) => ({ kind: 'audit', range }) as const);
  const state = verifyEnd(await walkChain(runner, pieces, (found) => { gather(found, vouched, heads); }), givenOut.audit_entry);
  vouched.complete = state.fault === null;
  return { part: partOf('audit ledger', state), vouched, heads };
}

/** What the audit ledger says against a custody chain that holds in itself, or null. */
function contradiction(foreign: number | null, heads: CustodyHeads): string | null {
  if (foreign !== null) return `Entry ${foreign} is not the one that the audit ledger names: the ledger was written anew.`;
  let lowest: number | null = null;
  for (const seq of heads.keys()) if (lowest === null || seq < lowest) lowest = seq;
  return lowest === null ? null : `Entry ${lowest} is named in the audit ledger and is no longer there.`;
}

/** The heads that fall into each range, shared out in one go. */
function shareOut(heads: CustodyHeads, ranges: readonly Range[]): Heads[] {
  const shares = ranges.map((): Heads => ({ seqs: [], hashes: [] }));
  const named = [...heads].sort(([a], [b]) => a - b);
  let share = 0;
  for (const [seq, hash] of named) {
    while (share < ranges.length - 1 && seq > ranges[share]!.upTo) share += 1;
    shares[share]!.seqs.push(seq);
    shares[share]!.hashes.push(hash);
  }
  return shares;
}

/** Recomputes the custody ledger and compares it with what the audit ledger says of it. */
export async function verifyCustody({ bounds, givenOut }: Layout, heads: CustodyHeads, runner: Runner): Promise<Part> {
  const ranges = rangesOf(bounds['custody_entry']!);
  const shares = shareOut(heads, ranges);
  const left = new Map(heads);
  let foreign: number | null = null;
  const pieces = ranges.map((range, i) => ({ kind: 'custody', range, heads: shares[i]! }) as const);
  const state = verifyEnd(await walkChain(runner, pieces, (found) => {
    foreign ??= found.foreign;
    for (const seq of found.met) left.delete(seq);
  }), givenOut.custody_entry);
  const against = state.fault === null ? contradiction(foreign, left) : null;
  return against === null ? partOf('custody ledger', state) : faultyPart('custody ledger', state.checked, against, state.head);
}

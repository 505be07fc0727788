import { desc, sql } from 'drizzle-orm';
import { canonicalJson, type JsonValue } from '../../app/custody/canonical-json.ts';
import { GENESIS } from '../../app/custody/chain.ts';
import { checkpointStatement, type CheckpointStatement, type Head, type SignedCheckpoint } from '../../app/signature/checkpoint-statement.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { ledgerHead } from '../ledger/ledger-head.ts';
import { checkpoint } from '../schema/index.ts';

export type Heads = { readonly audit: Head; readonly custody: Head };

export type CheckpointsStore = {
  /** How far both ledgers have come. */
  heads(): Promise<Heads>;
  /** Newest first, at most `limit`. What can't be read any more is left out: the check names it. */
  list(limit: number): Promise<CheckpointStatement[]>;
  keep(change: Change, keyId: string, id: string, signed: SignedCheckpoint): Promise<void>;
};

const EMPTY: Head = { seq: 0, hash: GENESIS };

/** How far both ledgers have come, as the file says. */
export const headsOf = (db: ReadDb): Heads => ({ audit: ledgerHead(db, 'audit_entry') ?? EMPTY, custody: ledgerHead(db, 'custody_entry') ?? EMPTY });

/** What was signed, from its stored text; null where that was bent. */
export function statementFrom(text: string): CheckpointStatement | null {
  try {
    return checkpointStatement.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

export function createCheckpointsStore(handle: StoreHandle): CheckpointsStore {
  return {
    async heads() { return headsOf(handle.read); },
    async list(limit) {
      return handle.read.orm.select({ statement: checkpoint.statement }).from(checkpoint).orderBy(desc(sql`rowid`)).limit(limit).all()
        .map((row) => statementFrom(row.statement)).filter((one) => one !== null);
    },
    keep: (change, keyId, id, { statement, signature }) => handle.transact((tx) => {
      tx.orm.insert(checkpoint).values({ id, at: statement.at, statement: canonicalJson(statement as unknown as JsonValue), keyId, signature }).run();
      appendAudit(tx, change, { subject: 'checkpoint', caseId: null, content: { why: statement.why, audit: statement.audit.seq, custody: statement.custody.seq } });
    }),
  };
}

import { canonicalJson, type JsonValue } from '../../app/custody/canonical-json.ts';
import { entryHash, GENESIS } from '../../app/custody/chain.ts';
import type { Change } from '../change.ts';
import type { WriteTx } from '../handle.ts';
import { auditEntry } from '../schema/index.ts';
import { ledgerHead, type LedgerHead } from './ledger-head.ts';

/**
 * Writes one entry of the audit ledger inside the caller's transaction, so that a change and its entry stand or fall together.
 * `subject` is the id or number of what was changed; `content` says what, and must be plain JSON.
 * Returns the number and digest of the new entry.
 */
export function appendAudit(tx: WriteTx, change: Change, entry: { subject: string; caseId: string | null; content: JsonValue }): LedgerHead {
  const last = ledgerHead(tx, 'audit_entry');
  const seq = (last?.seq ?? 0) + 1;
  const previous = last?.hash ?? GENESIS;
  const hash = entryHash(previous, {
    seq, at: change.at, person: change.personId, operation: change.operation, subject: entry.subject, case: entry.caseId, content: entry.content,
  });
  tx.orm.insert(auditEntry).values({
    seq, at: change.at, personId: change.personId, operation: change.operation, subject: entry.subject, caseId: entry.caseId,
    content: canonicalJson(entry.content), previous, hash,
  }).run();
  return { seq, hash };
}

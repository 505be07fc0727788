import { canonicalJson, type JsonValue } from '../../app/custody/canonical-json.ts';
import { entryHash, GENESIS } from '../../app/custody/chain.ts';
import type { Change } from '../change.ts';
import type { WriteTx } from '../handle.ts';
import { auditEntry } from '../schema/index.ts';
import { ledgerHead, type LedgerHead } from './ledger-head.ts';
import { vouch } from './vouch.ts';

/**
 * Writes one entry of the audit ledger inside the caller's transaction, so that a change and its entry stand or fall together.
 * `subject` is the id or number of what was changed; `content` says what, and must be plain JSON;
 * the digests of the rows written since the entry before are added to it as `rows`.
 * Returns the number and digest of the new entry.
 */
export function appendAudit(tx: WriteTx, change: Change, entry: { subject: string; caseId: string | null; content: Readonly<Record<string, JsonValue | undefined>> }): LedgerHead {
  const last = ledgerHead(tx, 'audit_entry');
  const seq = (last?.seq ?? 0) + 1;
  const previous = last?.hash ?? GENESIS;
  const content: JsonValue = { ...entry.content, ...vouch(tx) };
  const hash = entryHash(previous, {
    seq, at: change.at, person: change.personId, operation: change.operation, subject: entry.subject, case: entry.caseId, content,
  });
  tx.orm.insert(auditEntry).values({
    seq, at: change.at, personId: change.personId, operation: change.operation, subject: entry.subject, caseId: entry.caseId,
    content: canonicalJson(content), previous, hash,
  }).run();
  return { seq, hash };
}

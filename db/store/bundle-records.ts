import type { AuditDocument, CheckpointsDocument } from '../../app/bundle/bundle-documents.ts';
import type { LedgerWord } from '../../app/bundle/bundle-paths.ts';
import type { Head } from '../../app/signature/checkpoint-statement.ts';
import type { ReadDb } from '../handle.ts';
import { headsOf, statementFrom } from './checkpoints.ts';

export type CaseToBundle = { readonly id: string; readonly number: string; readonly receivedAt: string };

/** Cases received from `from` on and before `before` (instants, UTC ISO 8601), in the order in which they came. */
export function casesReceived(db: ReadDb, from: string, before: string): CaseToBundle[] {
  return db.all<CaseToBundle>('SELECT id, number, received_at AS receivedAt FROM case_record WHERE received_at >= @from AND received_at < @before ORDER BY received_at, number', { from, before });
}

/** The audit entries of a case as they were hashed, in the ledger's order. */
export function auditStatements(db: ReadDb, caseId: string): AuditDocument['entries'] {
  type Row = { seq: number; at: string; case_id: string | null; person_id: string | null; operation: string; subject: string; content: string; previous: string; hash: string; person: string | null };
  const rows = db.all<Row>(`
    SELECT e.seq, e.at, e.case_id, e.person_id, e.operation, e.subject, e.content, e.previous, e.hash, p.name AS person
    FROM audit_entry e LEFT JOIN person p ON p.id = e.person_id WHERE e.case_id = @caseId ORDER BY e.seq`, { caseId });
  return rows.map((row) => ({
    statement: {
      seq: row.seq, at: row.at, person: row.person_id, operation: row.operation, subject: row.subject, case: row.case_id,
      content: JSON.parse(row.content) as Record<string, unknown>, previous: row.previous,
    },
    hash: row.hash, personName: row.person ?? '',
  }));
}

/** Number and digest of entries of a ledger, from one number to another, both counted in. */
export function chainOf(db: ReadDb, ledger: LedgerWord, from: number, to: number): Head[] {
  return db.all<Head>(`SELECT seq, hash FROM ${ledger === 'custody' ? 'custody_entry' : 'audit_entry'} WHERE seq BETWEEN @from AND @to ORDER BY seq`, { from, to });
}

/** Signed checkpoints up to the given heads, oldest first; what can't be read any more is left out. */
export function checkpointsUpTo(db: ReadDb, heads: { readonly audit: Head; readonly custody: Head }): CheckpointsDocument['checkpoints'] {
  type Row = { statement: string; signature: string; public_key: string };
  const rows = db.all<Row>('SELECT c.statement, c.signature, k.public_key FROM checkpoint c JOIN signing_key k ON k.id = c.key_id ORDER BY c.rowid', {});
  return rows.flatMap(({ statement, signature, public_key: publicKey }) => {
    const read = statementFrom(statement);
    return read === null || read.audit.seq > heads.audit.seq || read.custody.seq > heads.custody.seq ? [] : [{ statement: read, publicKey, signature }];
  });
}

export { headsOf };

/** When each raw record of a case was taken in, by its id. */
export function rawTimes(db: ReadDb, caseId: string): ReadonlyMap<string, string> {
  return new Map(db.all<{ id: string; at: string }>('SELECT id, added_at AS at FROM raw_record WHERE case_id = @caseId', { caseId }).map(({ id, at }) => [id, at]));
}

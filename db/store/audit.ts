import type { AuditView } from '../../app/contract/cases.ts';
import type { JsonValue } from '../../app/custody/canonical-json.ts';
import type { Change } from '../change.ts';
import type { StoreHandle } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';

export type AuditStore = {
  /** Newest first; of one case or of the whole house. Without the digests of rows, which only the check reads. */
  list(filter: { readonly caseId: string | null; readonly limit: number; readonly offset: number }): Promise<{ total: number; rows: AuditView[] }>;
  /** Writes an entry for something done to the casebook as a whole, which changes no record of its own. */
  note(change: Change, entry: { subject: string; content: Readonly<Record<string, JsonValue>> }): Promise<void>;
};

type Row = { seq: number; at: string; person: string | null; operation: string; subject: string; number: string | null; content: string; previous: string; hash: string };

/** Who stands for the time before the first person exists. */
const NOBODY = 'Culet';

export function createAuditStore(handle: StoreHandle): AuditStore {
  return {
    async list({ caseId, limit, offset }) {
      const where = caseId === null ? '1' : 'e.case_id = @caseId';
      const filter: Record<string, string> = caseId === null ? {} : { caseId };
      // Numbers have no gaps: of the whole ledger, the last one is the count, and a million entries are not counted.
      const total = handle.read.get<{ n: number }>(`SELECT ${caseId === null ? 'coalesce(max(e.seq), 0)' : 'count(*)'} AS n FROM audit_entry e WHERE ${where}`, filter)!.n;
      const rows = handle.read.all<Row>(
        `SELECT e.seq, e.at, p.name AS person, e.operation, e.subject, n.number, CASE WHEN json_valid(e.content) THEN json_remove(e.content, '$.rows', '$.unvouched') ELSE e.content END AS content, e.previous, e.hash
         FROM audit_entry e LEFT JOIN person p ON p.id = e.person_id LEFT JOIN case_record n ON n.id = e.case_id
         WHERE ${where} ORDER BY e.seq DESC LIMIT @limit OFFSET @offset`, { ...filter, limit, offset });
      return {
        total,
        rows: rows.map((row) => ({
          seq: row.seq, at: row.at, person: row.person ?? NOBODY, operation: row.operation, subject: row.subject, caseNumber: row.number,
          content: row.content, previous: row.previous, hash: row.hash,
        })),
      };
    },
    note: (change, entry) => handle.transact((tx) => { appendAudit(tx, change, { ...entry, caseId: null }); }),
  };
}

import type { ReportRow } from '../../app/contract/report-row.ts';
import type { TemplateKind } from '../../app/report/sections/section.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { ledgerHead } from '../ledger/ledger-head.ts';
import { report, reportWithdrawal } from '../schema/index.ts';
import { nextNumber } from './numbers.ts';
import { settleCase } from './settle-case.ts';

type PersonChange = Change & { readonly personId: string };

type Row = {
  id: string; number: string; revision: number; case_id: string; case_number: string; client_name: string; stones: number;
  issued_at: string; issued_by: string; pdf_sha256: string; kind: TemplateKind; subject: string; reason: string | null; newest: number;
  withdrawn_at: string | null; withdrawn_by: string | null; withdrawn_reason: string | null;
};

/** Reports from before there were several kinds are on a whole case. */
const SELECT = `
  SELECT r.id, r.number, r.revision, r.case_id, c.number AS case_number, k.name AS client_name,
         COALESCE(json_extract(r.model, '$.subject.stones'), json_array_length(r.model, '$.stones')) AS stones, r.issued_at, p.name AS issued_by, r.pdf_sha256,
         COALESCE(r.subject_kind, 'case') AS kind, COALESCE(json_extract(r.model, '$.subject.label'), c.number) AS subject, r.reason,
         (SELECT max(o.revision) FROM report o WHERE o.number = r.number) AS newest, w.at AS withdrawn_at, q.name AS withdrawn_by, w.reason AS withdrawn_reason
  FROM report r JOIN case_record c ON c.id = r.case_id JOIN client k ON k.id = c.client_id JOIN person p ON p.id = r.issued_by
       LEFT JOIN report_withdrawal w ON w.report_id = r.id LEFT JOIN person q ON q.id = w.person_id`;

const viewOf = (row: Row): ReportRow => ({
  id: row.id, number: row.number, revision: row.revision, caseId: row.case_id, caseNumber: row.case_number, clientName: row.client_name,
  stones: row.stones, issuedAt: row.issued_at, issuedBy: row.issued_by, pdfSha256: row.pdf_sha256, kind: row.kind, subject: row.subject, reason: row.reason ?? '',
  state: row.withdrawn_at !== null ? 'withdrawn' : row.newest > row.revision ? 'superseded' : 'issued',
  withdrawn: row.withdrawn_at === null ? null : { at: row.withdrawn_at, by: row.withdrawn_by ?? '', reason: row.withdrawn_reason ?? '' },
});

/** The number and revision that a report gets when it is issued in `year` (of the laboratory's zone): the next revision of the one it replaces, else a number of its own. */
export type ReportNumber = { readonly number: string; readonly revision: number };

export function nextReportNumber(db: ReadDb | WriteTx, replaces: string | null, year: number): ReportNumber {
  const before = replaces === null ? undefined : db.get<{ number: string; revision: number }>(
    'SELECT o.number, max(o.revision) AS revision FROM report o WHERE o.number = (SELECT number FROM report WHERE id = @replaces) GROUP BY o.number', { replaces });
  if (before !== undefined) return { number: before.number, revision: before.revision + 1 };
  const last = db.get<{ last: number }>(`SELECT last FROM number_counter WHERE kind = 'report' AND year = @year`, { year })?.last ?? 0;
  return { number: `S-${year}-${String(last + 1).padStart(4, '0')}`, revision: 1 };
}

export type NewReport = ReportNumber & {
  readonly caseId: string; readonly year: number;
  /** Canonical text of the report's content, and its digest. */
  readonly model: string; readonly modelDigest: string;
  readonly pdf: Uint8Array; readonly pdfSha256: string;
  readonly subject: { readonly kind: TemplateKind; readonly id: string | null };
  /** The report that it is a revision of, and why it is made. */
  readonly amends: { readonly id: string; readonly reason: string } | null;
  /** The draft that it is issued from, which is then gone. */
  readonly draftId: string | null;
  /** Words in it that should not stand there by the rules of naming, and why they do; kept in its audit entry. */
  readonly words: { readonly reason: string; readonly words: readonly { readonly field: string; readonly word: string; readonly source: string }[] } | null;
};

export type StoredReport = { readonly name: string; readonly number: string; readonly revision: number; readonly model: string; readonly pdf: Uint8Array; readonly pdfSha256: string;
  /** Digest of the pages as the audit ledger wrote it down at their issue; null where it knows of none. */
  readonly ledgerSha256: string | null;
};

export type ReportsStore = {
  /** Newest first. */
  list(caseId: string | null): Promise<ReportRow[]>;
  get(reportId: string): Promise<ReportRow | null>;
  /** Stone or item that a report is on; null where it is on a whole case. */
  subjectOf(reportId: string): Promise<string | null>;
  nextNumber(replaces: string | null, year: number): Promise<ReportNumber>;
  /** The newest entry of the audit ledger, to be named when a report drawn from what stands now is issued. */
  lastChange(): Promise<number>;
  /**
   * Freezes a report drawn from the records as they stood at the audit entry `seen`. Null where its number was given out
   * or its case or the house changed since: the pages must then be drawn anew.
   */
  issue(change: PersonChange, report: NewReport, seen: number): Promise<ReportRow | null>;
  /** Says that a report no longer counts; null where it does not count any more already. Its bytes stay. */
  withdraw(change: PersonChange, reportId: string, reason: string): Promise<ReportRow | null>;
  content(reportId: string): Promise<StoredReport | null>;
};

/** Every change of a case is in the audit ledger, and so is every change of the house, which names no case. */
const changedSince = (tx: WriteTx, caseId: string, seen: number): boolean =>
  tx.get('SELECT 1 AS one FROM audit_entry WHERE seq > @seen AND (case_id = @caseId OR case_id IS NULL) LIMIT 1', { seen, caseId }) !== undefined;

function rowOf(db: ReadDb | WriteTx, id: string): ReportRow | null {
  const row = db.get<Row>(`${SELECT} WHERE r.id = @id`, { id });
  return row === undefined ? null : viewOf(row);
}

export function createReportsStore(handle: StoreHandle, newId: () => string): ReportsStore {
  return {
    async list(caseId) {
      return handle.read.all<Row>(`${SELECT} WHERE @caseId IS NULL OR r.case_id = @caseId ORDER BY r.issued_at DESC, r.rowid DESC`, { caseId }).map(viewOf);
    },
    async get(reportId) { return rowOf(handle.read, reportId); },
    async subjectOf(reportId) { return handle.read.get<{ id: string | null }>('SELECT subject_id AS id FROM report WHERE id = ?', [reportId])?.id ?? null; },
    async nextNumber(replaces, year) { return nextReportNumber(handle.read, replaces, year); },
    async lastChange() { return ledgerHead(handle.read, 'audit_entry')?.seq ?? 0; },
    issue: (change, fresh, seen) => handle.transact((tx) => {
      if (changedSince(tx, fresh.caseId, seen)) return null;
      const due = nextReportNumber(tx, fresh.amends?.id ?? null, fresh.year);
      if (due.number !== fresh.number || due.revision !== fresh.revision) return null;
      if (fresh.revision === 1) nextNumber(tx, 'report', fresh.year);
      const id = newId();
      tx.orm.insert(report).values({
        id, caseId: fresh.caseId, number: fresh.number, revision: fresh.revision, model: fresh.model, modelDigest: fresh.modelDigest,
        pdf: Buffer.from(fresh.pdf), pdfSha256: fresh.pdfSha256, issuedAt: change.at, issuedBy: change.personId,
        subjectKind: fresh.subject.kind, subjectId: fresh.subject.id, replaces: fresh.amends?.id ?? null, reason: fresh.amends?.reason ?? null,
      }).run();
      if (fresh.draftId !== null) tx.run('DELETE FROM report_draft WHERE id = ?', [fresh.draftId]);
      settleCase(tx, fresh.caseId);
      appendAudit(tx, change, {
        subject: fresh.number, caseId: fresh.caseId,
        content: { number: fresh.number, revision: fresh.revision, model: fresh.modelDigest, pdf: fresh.pdfSha256, ...(fresh.amends !== null && { replaces: fresh.amends.id, reason: fresh.amends.reason }), ...(fresh.words !== null && { standing: fresh.words }) },
      });
      return rowOf(tx, id);
    }),
    withdraw: (change, reportId, reason) => handle.transact((tx) => {
      const before = rowOf(tx, reportId);
      if (before === null || before.state !== 'issued') return null;
      tx.orm.insert(reportWithdrawal).values({ id: newId(), reportId, reason, at: change.at, personId: change.personId }).run();
      settleCase(tx, before.caseId);
      appendAudit(tx, change, { subject: before.number, caseId: before.caseId, content: { number: before.number, revision: before.revision, reason } });
      return rowOf(tx, reportId);
    }),
    async content(reportId) {
      const row = handle.read.get<{ number: string; revision: number; model: string; pdf: Buffer; pdf_sha256: string; ledger: string | null }>(`
        SELECT r.number, r.revision, r.model, r.pdf, r.pdf_sha256,
               (SELECT a.content ->> '$.pdf' FROM audit_entry a WHERE a.case_id = r.case_id AND a.subject = r.number AND a.content ->> '$.revision' = r.revision AND a.content ->> '$.pdf' IS NOT NULL ORDER BY a.seq LIMIT 1) AS ledger
        FROM report r WHERE r.id = @reportId`, { reportId });
      if (row === undefined) return null;
      const name = `${row.number}${row.revision > 1 ? `-revision-${row.revision}` : ''}.pdf`;
      return { name, number: row.number, revision: row.revision, model: row.model, pdf: new Uint8Array(row.pdf), pdfSha256: row.pdf_sha256, ledgerSha256: row.ledger };
    },
  };
}

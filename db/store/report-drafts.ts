import type { DraftRow } from '../../app/contract/report-drafts.ts';
import { draftContent, type DraftContent } from '../../app/report/draft/draft-content.ts';
import type { Change } from '../change.ts';
import type { StoreHandle } from '../handle.ts';
import { reportDraft } from '../schema/index.ts';

type PersonChange = Change & { readonly personId: string };

export type StoredDraft = { readonly id: string; readonly caseId: string; readonly content: DraftContent; readonly updatedAt: string };

export type ReportDraftsStore = {
  /** Last touched first; null: of all cases. */
  list(caseId: string | null): Promise<DraftRow[]>;
  get(draftId: string): Promise<StoredDraft | null>;
  create(change: PersonChange, caseId: string, content: DraftContent): Promise<string>;
  /** False where the draft is gone: it was issued or discarded meanwhile. */
  save(change: PersonChange, draftId: string, content: DraftContent): Promise<boolean>;
  discard(draftId: string): Promise<void>;
};

type Row = { id: string; caseId: string; caseNumber: string; clientName: string; subject: string; content: string; updatedAt: string; by: string };

/** Reports in the making. They are no records and leave no trace in a ledger; what is issued from them does. */
export function createReportDraftsStore(handle: StoreHandle, newId: () => string): ReportDraftsStore {
  return {
    async list(caseId) {
      const rows = handle.read.all<Row>(`
        SELECT d.id, d.case_id AS caseId, c.number AS caseNumber, k.name AS clientName, COALESCE(s.label, i.label, c.number) AS subject, d.content, d.updated_at AS updatedAt, p.name AS by
        FROM report_draft d JOIN case_record c ON c.id = d.case_id JOIN client k ON k.id = c.client_id JOIN person p ON p.id = d.updated_by
             LEFT JOIN stone s ON s.id = json_extract(d.content, '$.subject.id') LEFT JOIN item i ON i.id = json_extract(d.content, '$.subject.id')
        WHERE @caseId IS NULL OR d.case_id = @caseId ORDER BY d.updated_at DESC`, { caseId });
      return rows.map(({ content, ...row }) => {
        const { subject, title, amends } = draftContent.parse(JSON.parse(content));
        return { ...row, kind: subject.kind, subjectId: subject.id, title, amends };
      });
    },
    async get(draftId) {
      const row = handle.read.get<{ id: string; caseId: string; content: string; updatedAt: string }>('SELECT id, case_id AS caseId, content, updated_at AS updatedAt FROM report_draft WHERE id = ?', [draftId]);
      return row === undefined ? null : { ...row, content: draftContent.parse(JSON.parse(row.content)) };
    },
    create: (change, caseId, content) => handle.transact((tx) => {
      const id = newId();
      tx.orm.insert(reportDraft).values({ id, caseId, content: JSON.stringify(content), createdAt: change.at, createdBy: change.personId, updatedAt: change.at, updatedBy: change.personId }).run();
      return id;
    }),
    save: (change, draftId, content) => handle.transact((tx) => tx.run('UPDATE report_draft SET content = @content, updated_at = @at, updated_by = @by WHERE id = @draftId',
      { content: JSON.stringify(content), at: change.at, by: change.personId, draftId }).changes > 0),
    discard: (draftId) => handle.transact((tx) => { tx.run('DELETE FROM report_draft WHERE id = ?', [draftId]); }),
  };
}

import type { Failure } from '../../app/contract/failure.ts';
import { newDraft } from '../../app/report/draft/new-draft.ts';
import type { DraftContent } from '../../app/report/draft/draft-content.ts';
import { ok, type Result } from '../../app/result.ts';
import { theLaboratory } from '../../db/store/laboratory.ts';
import { buildReportModel, missingOf } from './build-report-model.ts';
import { conflict, notFound } from './failures.ts';
import { issueReport, renderModel } from './issue-report.ts';
import { issuedPages } from './issued-pages.ts';
import { ownedBytes } from './owned-bytes.ts';
import type { Services } from './service.ts';
import { changing, reading, type Work, type WorkDeps } from './work-context.ts';

type ReportServices = Pick<Services, 'reports.list' | 'reports.prepare' | 'reports.preview' | 'reports.issue' | 'reports.pdf' | 'reports.withdraw'>;

/** A report on the whole case by its template, as it begins; a revision where one on the whole case stands already. */
async function wholeCase(caseId: string, reason: string, { casebook, stores }: Work): Promise<Result<DraftContent, Failure>> {
  const view = await casebook.cases.get(caseId);
  if (view === null) return notFound('This case');
  const stones = view.parcels.flatMap((parcel) => parcel.items).flatMap((item) => item.stones).length;
  const kind = stones === 1 ? 'single-stone' : 'case';
  const template = (await stores.reportHouse.templates()).find((one) => one.templateId === kind);
  if (template === undefined) throw new Error(`no template for ${kind}`);
  const standing = (await stores.reports.list(caseId)).find((row) => row.state === 'issued' && row.subject === view.number);
  return ok({ ...newDraft(template, { kind, id: null }, theLaboratory(casebook.handle.read).settings), amends: standing?.id ?? null, reason });
}

/** The model as it would be drawn now, without a number. */
async function drafted(caseId: string, work: Work) {
  const content = await wholeCase(caseId, '', work);
  // A look at the case is no amendment: it tells how the records stand.
  return content.ok ? buildReportModel({ caseId, content: { ...content.value, amends: null }, issue: null, issuer: null }, work) : content;
}

export function createReportServices(deps: WorkDeps): ReportServices {
  return {
    'reports.list': reading(deps, 'reports.list', async ({ caseId }, { stores }) => ok(await stores.reports.list(caseId))),

    'reports.prepare': reading(deps, 'reports.prepare', async ({ caseId }, work) => {
      const built = await drafted(caseId, work);
      return built.ok ? ok({ model: built.value.model, missing: missingOf(built.value.clauses) }) : built;
    }),

    'reports.preview': reading(deps, 'reports.preview', async ({ caseId }, work) => {
      const built = await drafted(caseId, work);
      if (!built.ok) return built;
      const pdf = await renderModel(built.value.model, null, work);
      return pdf.ok ? ok({ name: `${built.value.model.caseNumber}-draft.pdf`, pdf: ownedBytes(pdf.value.pdf) }) : pdf;
    }),

    'reports.issue': changing(deps, 'reports.issue', async ({ caseId, reason }, work) => {
      const content = await wholeCase(caseId, reason, work);
      return content.ok ? issueReport({ caseId, content: content.value, draftId: null, standing: null }, work) : content;
    }),

    'reports.withdraw': changing(deps, 'reports.withdraw', async ({ reportId, reason }, { stores, change }) => {
      if (await stores.reports.get(reportId) === null) return notFound('This report');
      const row = await stores.reports.withdraw(change, reportId, reason);
      return row === null ? conflict('This report no longer counts: it was replaced or withdrawn.', 'Open the reports and look which revision stands.') : ok(row);
    }),

    'reports.pdf': reading(deps, 'reports.pdf', async ({ reportId }, work) => {
      const stored = await issuedPages(reportId, work);
      return stored.ok ? ok({ name: stored.value.name, pdf: ownedBytes(stored.value.pdf), sha256: stored.value.pdfSha256 }) : stored;
    }),
  };
}

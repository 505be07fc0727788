import { createHash } from 'node:crypto';
import type { Failure } from '../../app/contract/failure.ts';
import type { ReportRow } from '../../app/contract/work.ts';
import { canonicalJson } from '../../app/custody/canonical-json.ts';
import { dayInZone } from '../../app/custody/calendar.ts';
import type { ReportModel } from '../../app/report/report-model.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { theLaboratory } from '../../db/store/laboratory.ts';
import { personById } from '../../db/store/people.ts';
import { signReport } from '../signature/sign-report.ts';
import type { DrawnReport } from '../workers/tasks/render-report.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { Enclosure } from '../print/report/enclosure.ts';
import { buildReportModel } from './build-report-model.ts';
import { enclose } from './enclose-report.ts';
import { conflict, notFound, refused } from './failures.ts';
import { ownedBytes } from './owned-bytes.ts';
import type { Services } from './service.ts';
import { changing, reading, type ChangingWork, type Work, type WorkDeps } from './work-context.ts';

type ReportServices = Pick<Services, 'reports.list' | 'reports.prepare' | 'reports.preview' | 'reports.issue' | 'reports.pdf'>;

const sha256 = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');

async function render(model: ReportModel, enclosure: Enclosure | null, { pool, call }: Work): Promise<Result<DrawnReport, Failure>> {
  const task = await pool.run('render-report', { model, enclosure }, { signal: call.signal });
  return task.ok ? task : taskFailure(task.error);
}

async function signDrawn(model: ReportModel, { document }: Enclosure, { pdf, file }: DrawnReport, { signer }: Work): Promise<Result<Uint8Array, Failure>> {
  if (file === null) throw new Error('issuing: the pages were drawn without room for a signature');
  return signReport({ model, document, pdf, file }, signer);
}

/** One attempt: numbers the report, draws it, and freezes it unless something changed meanwhile (null). */
async function tryIssue(caseId: string, work: ChangingWork): Promise<Result<ReportRow | null, Failure>> {
  const { stores, casebook, change, at } = work;
  const db = casebook.handle.read;
  const year = Number(dayInZone(at, theLaboratory(db).zone).slice(0, 4));
  const seen = await stores.reports.lastChange();
  const number = await stores.reports.nextNumber(caseId, year);
  const issue = { ...number, by: personById(db, change.personId)?.name ?? '' };
  const built = await buildReportModel(caseId, issue, work);
  if (!built.ok) return built;
  const { model, missing, source, records } = built.value;
  if (missing.length > 0) return refused(`The report can’t be issued yet: ${missing.join(' ')}`, 'Do what is missing, then issue it.');
  const text = canonicalJson(model);
  const modelDigest = sha256(text);
  const enclosure = enclose({ source, model, modelDigest, records }, true, db);
  if (!enclosure.ok) return enclosure;
  const drawn = await render(model, enclosure.value, work);
  if (!drawn.ok) return drawn;
  const pdf = await signDrawn(model, enclosure.value, drawn.value, work);
  if (!pdf.ok) return pdf;
  return ok(await stores.reports.issue(change, { ...number, caseId, year, model: text, modelDigest, pdf: pdf.value, pdfSha256: sha256(pdf.value) }, seen));
}

/** Attempts before giving up: the records of the case keep changing while its pages are drawn. */
const ATTEMPTS = 3;

async function issueReport(caseId: string, work: ChangingWork): Promise<Result<ReportRow, Failure>> {
  for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
    const tried = await tryIssue(caseId, work);
    if (!tried.ok) return tried;
    if (tried.value !== null) return ok(tried.value);
  }
  return conflict('The records of this case changed while its report was drawn.', 'Wait until the others have finished with this case, then issue the report again.');
}

export function createReportServices(deps: WorkDeps): ReportServices {
  return {
    'reports.list': reading(deps, 'reports.list', async ({ caseId }, { stores }) => ok(await stores.reports.list(caseId))),

    'reports.prepare': reading(deps, 'reports.prepare', async ({ caseId }, work) => {
      const built = await buildReportModel(caseId, null, work);
      return built.ok ? ok({ model: built.value.model, missing: built.value.missing }) : built;
    }),

    'reports.preview': reading(deps, 'reports.preview', async ({ caseId }, work) => {
      const built = await buildReportModel(caseId, null, work);
      if (!built.ok) return built;
      const pdf = await render(built.value.model, null, work);
      return pdf.ok ? ok({ name: `${built.value.model.caseNumber}-draft.pdf`, pdf: ownedBytes(pdf.value.pdf) }) : pdf;
    }),

    'reports.issue': changing(deps, 'reports.issue', ({ caseId }, work) => issueReport(caseId, work)),

    'reports.pdf': reading(deps, 'reports.pdf', async ({ reportId }, { stores }) => {
      const stored = await stores.reports.content(reportId);
      if (stored === null) return notFound('This report');
      if (sha256(stored.pdf) !== stored.pdfSha256) {
        return err({ code: 'unreadable', message: `The stored pages of ${stored.name} no longer have the digest they were issued with.`, next: 'Do not hand them out. Verify the casebook, and restore a backup in which it is sound.' });
      }
      return ok({ name: stored.name, pdf: ownedBytes(stored.pdf), sha256: stored.pdfSha256 });
    }),
  };
}

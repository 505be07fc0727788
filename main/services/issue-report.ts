import { createHash } from 'node:crypto';
import type { Failure } from '../../app/contract/failure.ts';
import type { ReportRow } from '../../app/contract/report-row.ts';
import { canonicalJson } from '../../app/custody/canonical-json.ts';
import { dayInZone } from '../../app/custody/calendar.ts';
import type { DraftContent } from '../../app/report/draft/draft-content.ts';
import { draftWords } from '../../app/report/draft/draft-words.ts';
import type { ReportModel } from '../../app/report/report-model.ts';
import { ok, type Result } from '../../app/result.ts';
import { theLaboratory } from '../../db/store/laboratory.ts';
import { personById } from '../../db/store/people.ts';
import type { Enclosure } from '../print/report/enclosure.ts';
import { signReport } from '../signature/sign-report.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { DrawnReport } from '../workers/tasks/render-report.ts';
import { buildReportModel, missingOf } from './build-report-model.ts';
import { enclose } from './enclose-report.ts';
import { conflict, refused } from './failures.ts';
import { answeredFor, type StandingWords } from './standing-words.ts';
import type { ChangingWork, Work } from './work-context.ts';

export const sha256 = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');

/** Draws the pages in a worker. */
export async function renderModel(model: ReportModel, enclosure: Enclosure | null, { pool, call }: Work): Promise<Result<DrawnReport, Failure>> {
  const task = await pool.run('render-report', { model, enclosure }, { signal: call.signal });
  return task.ok ? task : taskFailure(task.error);
}

async function signDrawn(model: ReportModel, { document }: Enclosure, { pdf, file }: DrawnReport, { signer }: Work): Promise<Result<Uint8Array, Failure>> {
  if (file === null) throw new Error('issuing: the pages were drawn without room for a signature');
  return signReport({ model, document, pdf, file }, signer);
}

export type ToIssue = { readonly caseId: string; readonly content: DraftContent; readonly draftId: string | null; /** Words that somebody answers for. */ readonly standing: StandingWords | null };

/** Why the report can't be a revision of the one that its draft names; null where it can, or where it is none. A draft may name anything: it is no record. */
async function refuseRevision({ caseId, content }: ToIssue, { stores }: ChangingWork): Promise<Result<never, Failure> | null> {
  if (content.amends === null) return null;
  const before = await stores.reports.get(content.amends);
  if (before?.state !== 'issued') return conflict('The report that is to be amended no longer counts: it was replaced or withdrawn.', 'Open the reports and amend the revision that stands.');
  if (before.caseId === caseId && await stores.reports.subjectOf(content.amends) === content.subject.id) return null;
  return refused(`This can’t be a revision of report ${before.number}: that one is on ${before.subject} of case ${before.caseNumber}.`, 'Amend a report on the same stone, item or case; on anything else, issue a report with a number of its own.');
}

/** One attempt: numbers the report, draws it, and freezes it unless something changed meanwhile (null). */
async function tryIssue(order: ToIssue, work: ChangingWork): Promise<Result<ReportRow | null, Failure>> {
  const { caseId, content, draftId, standing } = order;
  const { stores, casebook, change, at } = work;
  const db = casebook.handle.read;
  const year = Number(dayInZone(at, theLaboratory(db).zone).slice(0, 4));
  const seen = await stores.reports.lastChange();
  // At every attempt: what changed since the one before may be that somebody withdrew or amended that very report.
  const refusal = await refuseRevision(order, work);
  if (refusal !== null) return refusal;
  const number = await stores.reports.nextNumber(content.amends, year);
  const issue = { ...number, by: personById(db, change.personId)?.name ?? '' };
  const built = await buildReportModel({ caseId, content, issue, issuer: change.personId }, work);
  if (!built.ok) return built;
  const { model, clauses, source, records } = built.value;
  const missing = missingOf(clauses);
  if (missing.length > 0) return refused(`The report can’t be issued yet: ${missing.join(' ')}`, 'Do what is missing, then issue it.');
  const words = answeredFor(draftWords(content, source), standing);
  if (!words.ok) return words;
  const text = canonicalJson(model);
  const modelDigest = sha256(text);
  const enclosure = enclose({ source, model, modelDigest, records }, true, db);
  if (!enclosure.ok) return enclosure;
  const drawn = await renderModel(model, enclosure.value, work);
  if (!drawn.ok) return drawn;
  const pdf = await signDrawn(model, enclosure.value, drawn.value, work);
  if (!pdf.ok) return pdf;
  return ok(await stores.reports.issue(change, {
    ...number, caseId, year, model: text, modelDigest, pdf: pdf.value, pdfSha256: sha256(pdf.value), subject: content.subject, draftId, words: words.value,
    amends: content.amends === null ? null : { id: content.amends, reason: content.reason.trim() },
  }, seen));
}

/** Attempts before giving up: the records of the case keep changing while its pages are drawn. */
const ATTEMPTS = 3;

/** Numbers, draws and freezes a report. A revision is only made of the newest one that counts. */
export async function issueReport(order: ToIssue, work: ChangingWork): Promise<Result<ReportRow, Failure>> {
  for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
    const tried = await tryIssue(order, work);
    if (!tried.ok) return tried;
    if (tried.value !== null) return ok(tried.value);
  }
  return conflict('The records of this case changed while its report was drawn.', 'Wait until the others have finished with this case, then issue the report again.');
}

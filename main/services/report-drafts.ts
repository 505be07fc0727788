import type { DraftChoices } from '../../app/contract/report-drafts.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { narrowSource } from '../../app/report/content/narrow-source.ts';
import { photographsOf } from '../../app/report/content/report-source.ts';
import type { DraftContent } from '../../app/report/draft/draft-content.ts';
import { draftWords } from '../../app/report/draft/draft-words.ts';
import { newDraft } from '../../app/report/draft/new-draft.ts';
import { sectionOf } from '../../app/report/report-model.ts';
import { SECTIONS } from '../../app/report/sections/index.ts';
import { readStoredReport } from '../../app/report/stored/read-stored-report.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { caseRecords } from '../../db/store/case-records.ts';
import { theLaboratory } from '../../db/store/laboratory.ts';
import type { StoredDraft } from '../../db/store/report-drafts.ts';
import { buildReportModel, subjectLabel } from './build-report-model.ts';
import { conflict, notFound, refused } from './failures.ts';
import { issueReport, renderModel } from './issue-report.ts';
import { ownedBytes } from './owned-bytes.ts';
import { decisiveSpectra } from './report-figures.ts';
import type { Services } from './service.ts';
import { changing, reading, type Work, type WorkDeps } from './work-context.ts';
import type { ParsedInput } from '../../app/contract/index.ts';

type Create = ParsedInput<'reportDrafts.create'>;

async function contentOfNew(input: Exclude<Create, { amends: string }>, { casebook, stores }: Work): Promise<Result<{ caseId: string; content: DraftContent }, Failure>> {
  const view = await casebook.cases.get(input.caseId);
  if (view === null) return notFound('This case');
  const items = view.parcels.flatMap((parcel) => parcel.items);
  const known = input.subjectId === null || items.some((item) => item.id === input.subjectId || item.stones.some((stone) => stone.id === input.subjectId));
  if (!known) return notFound('What is to be reported');
  const template = (await stores.reportHouse.templates()).find((one) => one.templateId === (input.templateId ?? input.kind));
  if (template === undefined) return notFound('This template');
  if (template.content.withdrawn) return conflict('This template is no longer offered.', 'Choose another.');
  if (template.content.kind !== input.kind) return refused('This template is for another kind of report.', 'Choose one that fits what is reported.');
  return ok({ caseId: input.caseId, content: newDraft(template, { kind: input.kind, id: input.subjectId }, theLaboratory(casebook.handle.read).settings) });
}

/** A revision begins with the sections of the report it replaces. */
async function contentOfAmendment(amends: string, { casebook, stores }: Work): Promise<Result<{ caseId: string; content: DraftContent }, Failure>> {
  const row = await stores.reports.get(amends);
  const stored = await stores.reports.content(amends);
  if (row === null || stored === null) return notFound('This report');
  if (row.state !== 'issued') return conflict('This report no longer counts: it was replaced or withdrawn.', 'Amend the revision that stands.');
  const before = readStoredReport(stored.model);
  const templates = (await stores.reportHouse.templates()).filter((one) => !one.content.withdrawn);
  const template = templates.find((one) => one.templateId === before.template?.id) ?? templates.find((one) => one.templateId === before.subject.kind);
  if (template === undefined) return notFound('The template of this report');
  const fresh = newDraft(template, { kind: before.subject.kind, id: await stores.reports.subjectOf(amends) }, theLaboratory(casebook.handle.read).settings);
  const had = before.sections.map((part) => part.section);
  const sections = before.template === null ? fresh.sections : fresh.sections.map((entry) => ({ ...entry, on: had.includes(entry.id) || (entry.on && EMPTY_UNTIL_WRITTEN.has(entry.id)) }));
  return ok({ caseId: row.caseId, content: { ...fresh, sections, title: before.title, remarks: sectionOf(before, 'remarks')?.paragraphs.join('\n') ?? '', amends } });
}

/** Sections that are left out while they have nothing to say: that a report lacks them does not mean that nobody wanted them. */
const EMPTY_UNTIL_WRITTEN: ReadonlySet<string> = new Set(['remarks', 'overview']);

async function choicesOf({ caseId, content }: StoredDraft, { casebook, stores, at }: Work): Promise<DraftChoices | null> {
  const ofCase = await caseRecords(casebook.handle, caseId, at);
  if (ofCase === null) return null;
  const records = narrowSource(ofCase, content.subject);
  const texts = await stores.reportHouse.texts();
  const amended = content.amends === null ? null : await stores.reports.get(content.amends);
  const itemOf = (id: string | null): string => records.case.parcels.flatMap((parcel) => parcel.items).find((item) => item.id === id)?.label ?? '';
  return {
    caseNumber: records.case.number, label: subjectLabel(records, content.subject),
    sections: SECTIONS.map(({ id, title, tells }) => ({ id, title, tells })),
    figures: records.stones.flatMap(({ stone, runs, findings }) => {
      const decisive = new Set(decisiveSpectra(runs, findings).map(({ spectrum }) => spectrum.id));
      return runs.flatMap((run) => run.spectra.filter((spectrum) => spectrum.analysis !== null).map((spectrum) => ({
        spectrumId: spectrum.id, stone: stone.label, run: run.number, method: run.method, name: spectrum.fileName, decisive: decisive.has(spectrum.id),
      })));
    }),
    photographs: photographsOf(records).map((photograph) => ({ photographId: photograph.id, item: itemOf(photograph.itemId), caption: photograph.caption || photograph.name })),
    statements: { place: texts.place.text, conditions: texts.conditions.text, sampling: texts.sampling.text, external: texts.external.text },
    amends: amended === null ? null : { number: amended.number, revision: amended.revision },
  };
}

const gone = () => err({ code: 'not-found' as const, message: 'This draft is no longer there: it was issued or discarded.', next: 'Open the reports to see what was issued.' });

type DraftServices = Pick<Services, 'reportDrafts.list' | 'reportDrafts.create' | 'reportDrafts.open' | 'reportDrafts.save' | 'reportDrafts.discard' | 'reportDrafts.look' | 'reportDrafts.issue'>;

/** Reports in the making: what was chosen and written, and how it would look. */
export function createReportDraftServices(deps: WorkDeps): DraftServices {
  return {
    'reportDrafts.list': reading(deps, 'reportDrafts.list', async ({ caseId }, { stores }) => ok(await stores.reportDrafts.list(caseId))),
    'reportDrafts.create': changing(deps, 'reportDrafts.create', async (input, work) => {
      const made = 'amends' in input ? await contentOfAmendment(input.amends, work) : await contentOfNew(input, work);
      return made.ok ? ok({ draftId: await work.stores.reportDrafts.create(work.change, made.value.caseId, made.value.content) }) : made;
    }),
    'reportDrafts.open': reading(deps, 'reportDrafts.open', async ({ draftId }, work) => {
      const draft = await work.stores.reportDrafts.get(draftId);
      const choices = draft === null ? null : await choicesOf(draft, work);
      return draft === null || choices === null ? gone() : ok({ caseId: draft.caseId, content: draft.content, choices });
    }),
    'reportDrafts.save': changing(deps, 'reportDrafts.save', async ({ draftId, content }, { stores, change }) =>
      (await stores.reportDrafts.save(change, draftId, content) ? ok({ done: true }) : gone())),
    'reportDrafts.discard': reading(deps, 'reportDrafts.discard', async ({ draftId }, { stores }) => {
      await stores.reportDrafts.discard(draftId);
      return ok({ done: true });
    }),
    'reportDrafts.look': reading(deps, 'reportDrafts.look', async ({ draftId, content }, work) => {
      const draft = await work.stores.reportDrafts.get(draftId);
      if (draft === null) return gone();
      const built = await buildReportModel({ caseId: draft.caseId, content, issue: null, issuer: null }, work);
      if (!built.ok) return built;
      const { model, clauses, source } = built.value;
      const pdf = await renderModel(model, null, work);
      if (!pdf.ok) return pdf;
      return ok({
        name: `${model.caseNumber}-${model.subject.label}-draft.pdf`.replaceAll('/', '-'), pdf: ownedBytes(pdf.value.pdf), clauses,
        words: draftWords(content, source), changes: sectionOf(model, 'amendment')?.changes ?? [],
      });
    }),
    'reportDrafts.issue': changing(deps, 'reportDrafts.issue', async ({ draftId, standing = null }, work) => {
      const draft = await work.stores.reportDrafts.get(draftId);
      return draft === null ? gone() : issueReport({ caseId: draft.caseId, content: draft.content, draftId, standing }, work);
    }),
  };
}

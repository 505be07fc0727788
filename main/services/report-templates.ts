import type { Failure } from '../../app/contract/failure.ts';
import type { TemplateDesk } from '../../app/contract/report-house.ts';
import { newDraft } from '../../app/report/draft/new-draft.ts';
import { SECTIONS, sectionById } from '../../app/report/sections/index.ts';
import { TEMPLATE_KINDS, TEMPLATE_KIND_WORDS, type TemplateKind } from '../../app/report/sections/section.ts';
import { suppliedTemplates } from '../../app/report/templates/supplied-templates.ts';
import type { ReportTemplate, TemplateContent } from '../../app/report/templates/template.ts';
import { ok, type Result } from '../../app/result.ts';
import type { CaseView } from '../../app/contract/cases.ts';
import { theLaboratory } from '../../db/store/laboratory.ts';
import { buildReportModel, subjectLabel } from './build-report-model.ts';
import { conflict, refused } from './failures.ts';
import { renderModel } from './issue-report.ts';
import { ownedBytes } from './owned-bytes.ts';
import type { Work } from './work-context.ts';

/** How many cases are looked through, newest first, for something to show a template with. */
const CASES_LOOKED_AT = 200;

const isSupplied = (templateId: string | null): boolean => (TEMPLATE_KINDS as readonly string[]).includes(templateId ?? '');

/** Templates, their versions and what they may consist of, for the form in the house. */
export async function templateDesk({ stores }: Pick<Work, 'stores'>): Promise<TemplateDesk> {
  const drafts = await stores.reportHouse.draftsByTemplate();
  return {
    templates: (await stores.reportHouse.templates()).map((one) => ({ ...one, supplied: isSupplied(one.templateId), drafts: drafts.get(one.templateId) ?? 0 })),
    versions: await stores.reportHouse.templateVersions(),
    supplied: suppliedTemplates(),
    sections: SECTIONS.map(({ id, title, tells, clauses }) => ({ id, title, tells, clauses: [...clauses] })),
  };
}

/** Why a template can't be kept so; null where it can. Each kind of report must always have one to begin with. */
export function refuseTemplate(templateId: string | null, content: TemplateContent, kept: readonly ReportTemplate[]): Result<never, Failure> | null {
  const before = kept.find((one) => one.templateId === templateId);
  const name = content.name.trim().toLocaleLowerCase('en');
  const printed = content.sections.filter((entry) => entry.on);
  if (before !== undefined && before.content.kind !== content.kind) return refused('A template keeps the kind of report it was made for.', 'Make a new template for the other kind.');
  if (content.withdrawn && isSupplied(templateId)) return refused('The template that the program came with is always offered: every kind of report needs one.', 'Change it, or set it back to how it came.');
  if (printed.length === 0) return refused('A report without a section says nothing.', 'Tick at least one section.');
  const strange = content.sections.find((entry) => !sectionById(entry.id).templates.includes(content.kind));
  if (strange !== undefined) return refused(`“${sectionById(strange.id).title}” does not suit a report on a ${TEMPLATE_KIND_WORDS[content.kind]}.`, 'Leave it out.');
  if (!content.withdrawn && kept.some((one) => one.templateId !== templateId && !one.content.withdrawn && one.content.kind === content.kind && one.content.name.trim().toLocaleLowerCase('en') === name)) {
    return conflict(`There is a template “${content.name.trim()}” for this kind of report already.`, 'Give this one another name.');
  }
  return null;
}

/** What of a case a report of that kind could be about; undefined where there is nothing. */
function subjectIn(view: CaseView, kind: TemplateKind): string | null | undefined {
  const items = view.parcels.flatMap((parcel) => parcel.items);
  switch (kind) {
    case 'case': return null;
    case 'single-stone': return items.flatMap((item) => item.stones)[0]?.id;
    case 'lot': return items.find((item) => item.kind === 'lot')?.id;
    case 'piece': return items.find((item) => item.kind !== 'lot' && item.kind !== 'loose')?.id;
  }
}

/** The pages as a template that is not kept yet would make them, of the newest case that has something of its kind. */
export async function lookAtTemplate(content: TemplateContent, work: Work): Promise<Result<{ of: string | null; pdf: Uint8Array<ArrayBuffer> | null }, Failure>> {
  const { casebook } = work;
  const { rows } = await casebook.cases.list({ text: '', state: 'all', limit: CASES_LOOKED_AT, offset: 0 });
  for (const { id } of rows) {
    const view = await casebook.cases.get(id);
    const subjectId = view === null ? undefined : subjectIn(view, content.kind);
    if (view === null || subjectId === undefined) continue;
    const template: ReportTemplate = { templateId: content.kind, version: 0, content };
    const subject = { kind: content.kind, id: subjectId };
    const built = await buildReportModel({ caseId: id, content: newDraft(template, subject, theLaboratory(casebook.handle.read).settings), issue: null, issuer: null, template }, work);
    if (!built.ok) return built;
    const pdf = await renderModel(built.value.model, null, work);
    if (!pdf.ok) return pdf;
    const label = subjectLabel({ case: view }, subject);
    return ok({ of: label === view.number ? `case ${view.number}` : `${label} of case ${view.number}`, pdf: ownedBytes(pdf.value.pdf) });
  }
  return ok({ of: null, pdf: null });
}

import { reportModel, type ReportModel } from '../report-model.ts';
import { reportDifference } from '../revision/report-difference.ts';
import type { AmendmentPart } from '../sections/amendment.ts';
import { sectionById, type ReportSection, type SectionId } from '../sections/index.ts';
import { TEXT_KINDS } from '../texts/text-kinds.ts';
import { localDate } from './local-time.ts';
import type { ReportSource } from './report-source.ts';

/** What a report is made of beside the records: its kind and label, its title and paper, its sections in order, and what it replaces. */
export type ReportPlan = {
  readonly subject: ReportModel['subject']; readonly template: ReportModel['template'];
  readonly title: string; readonly pageSize: ReportModel['pageSize']; readonly sections: readonly SectionId[];
  /** The report that this one is a revision of, and why it is made. */
  readonly amends: { readonly before: ReportModel; readonly reason: string } | null;
};

function amendmentOf(after: ReportModel, { before, reason }: NonNullable<ReportPlan['amends']>): AmendmentPart {
  return {
    section: 'amendment', replaces: { number: before.number, revision: before.revision, issued: before.issued }, reason: reason.trim(),
    changes: reportDifference(before, after),
  };
}

/** What a report says, from the records as they stand. The same records and plan give the same report. */
export function composeReport(source: ReportSource, plan: ReportPlan): ReportModel {
  const { laboratory, issue, at } = source;
  const { case: ofCase } = source;
  const model: ReportModel = reportModel.parse({
    schema: 'culet-report-2', language: 'en', demonstration: laboratory.isDemonstration, draft: issue === null,
    number: issue?.number ?? '', revision: issue?.revision ?? 0, title: plan.title, pageSize: plan.pageSize,
    laboratory: {
      name: laboratory.name, address: laboratory.address, zone: laboratory.zone,
      logo: laboratory.logo === null || source.logoBase64 === null ? null : { mediaType: laboratory.logo.mediaType, base64: source.logoBase64 },
    },
    client: { name: ofCase.client.name, address: ofCase.client.address },
    caseNumber: ofCase.number, subject: plan.subject, template: plan.template,
    texts: TEXT_KINDS.map((kind) => ({ kind, version: source.texts[kind].version })),
    issued: issue === null ? '' : localDate(at, laboratory.zone), issuedAt: at,
    sections: plan.sections.flatMap((id): ReportSection[] => {
      const part = sectionById(id).build(source);
      return part === null ? [] : [part];
    }),
  } satisfies ReportModel);
  return plan.amends === null ? model : { ...model, sections: [amendmentOf(model, plan.amends), ...model.sections] };
}

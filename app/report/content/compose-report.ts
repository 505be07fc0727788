import { reportModel, type ReportModel } from '../report-model.ts';
import { sectionById, usualSections, type ReportSection, type SectionId } from '../sections/index.ts';
import { localDate } from './local-time.ts';
import type { ReportSource } from './report-source.ts';

export const REPORT_TITLE = 'Diamond screening report';

/** What a report is made of beside the records: its kind and label, its title and paper, its sections in order. */
export type ReportPlan = {
  readonly subject: ReportModel['subject']; readonly title: string; readonly pageSize: ReportModel['pageSize']; readonly sections: readonly SectionId[];
};

/** A report on all of a case, as it is made where nobody chose anything. */
export const planOfCase = (source: ReportSource): ReportPlan => {
  const kind = source.stones.length === 1 ? 'single-stone' : 'case';
  return {
    subject: { kind, label: source.case.number, stones: source.stones.length }, title: REPORT_TITLE,
    pageSize: source.laboratory.settings.pageSize, sections: usualSections(kind),
  };
};

/** What a report says, from the records as they stand. The same records and plan give the same report. */
export function composeReport(source: ReportSource, plan: ReportPlan = planOfCase(source)): ReportModel {
  const { laboratory, issue, at } = source;
  const { case: ofCase } = source;
  return reportModel.parse({
    schema: 'culet-report-2', language: 'en', demonstration: laboratory.isDemonstration, draft: issue === null,
    number: issue?.number ?? '', revision: issue?.revision ?? 0, title: plan.title, pageSize: plan.pageSize,
    laboratory: {
      name: laboratory.name, address: laboratory.address, zone: laboratory.zone,
      logo: laboratory.logo === null || source.logoBase64 === null ? null : { mediaType: laboratory.logo.mediaType, base64: source.logoBase64 },
    },
    client: { name: ofCase.client.name, address: ofCase.client.address },
    caseNumber: ofCase.number, subject: plan.subject,
    issued: issue === null ? '' : localDate(at, laboratory.zone), issuedAt: at,
    sections: plan.sections.flatMap((id): ReportSection[] => {
      const part = sectionById(id).build(source);
      return part === null ? [] : [part];
    }),
  } satisfies ReportModel);
}

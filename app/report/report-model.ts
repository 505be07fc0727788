import { z } from 'zod';
import { reportSection, type SectionId, type SectionPart } from './sections/index.ts';
import { textKind } from './texts/text-kinds.ts';
import { TEMPLATE_KINDS } from './sections/section.ts';

/** Everything the pages of a report say, its sections in print order; the PDF is drawn from this alone. All times already in the laboratory's zone, as text. */
export const reportModel = z.object({
  schema: z.literal('culet-report-2'),
  language: z.literal('en'),
  demonstration: z.boolean(),
  draft: z.boolean(),
  number: z.string(),
  revision: z.number(),
  title: z.string(),
  pageSize: z.enum(['A4', 'Letter']),
  laboratory: z.object({ name: z.string(), address: z.string(), zone: z.string(), logo: z.object({ mediaType: z.string(), base64: z.string() }).nullable() }),
  client: z.object({ name: z.string(), address: z.string() }),
  caseNumber: z.string(),
  /** What is reported: a stone, an item or a case, and its label ("A-1", "A", "C-2026-0001"). */
  subject: z.object({ kind: z.enum(TEMPLATE_KINDS), label: z.string(), stones: z.number() }),
  /** The template it was made with; null where nobody chose one. */
  template: z.object({ id: z.string(), name: z.string(), version: z.number() }).nullable(),
  /** The laboratory's texts it was made with; version 0 is the one the program comes with. */
  texts: z.array(z.object({ kind: textKind, version: z.number() })),
  issued: z.string(),
  /** UTC instant of issue, for the PDF's own dates. */
  issuedAt: z.string(),
  sections: z.array(reportSection),
});
export type ReportModel = z.infer<typeof reportModel>;

/** The content of one section, or undefined where the report was made without it. */
export function sectionOf<Id extends SectionId>(model: Pick<ReportModel, 'sections'>, id: Id): SectionPart<Id> | undefined {
  return model.sections.find((section): section is SectionPart<Id> => section.section === id);
}

import { z } from 'zod';
import type { ReportSource } from '../content/report-source.ts';
import { amendmentPart, amendmentSection } from './amendment.ts';
import { conductPart, conductSection } from './conduct.ts';
import { custodyPart, custodySection } from './custody.ts';
import { itemsPart, itemsSection } from './items.ts';
import { limitsPart, limitsSection } from './limits.ts';
import { lotsPart, lotsSection } from './lots.ts';
import { methodsPart, methodsSection } from './methods.ts';
import { mountedWeightsPart, mountedWeightsSection } from './mounted-weights.ts';
import { opinionsPart, opinionsSection } from './opinions.ts';
import { overviewPart, overviewSection } from './overview.ts';
import { particularsPart, particularsSection } from './particulars.ts';
import { pieceMapPart, pieceMapSection } from './piece-map.ts';
import { rawRecordsPart, rawRecordsSection } from './raw-records.ts';
import { remarksPart, remarksSection } from './remarks.ts';
import { resultsPart, resultsSection } from './results.ts';
import type { SectionLine, TemplateKind } from './section.ts';
import { signaturesPart, signaturesSection } from './signatures.ts';

/** Content of one section, told apart by `section`. A section's schema stands here and its definition below; its drawing is in main/print/report/sections. */
export const reportSection = z.discriminatedUnion('section', [
  amendmentPart, overviewPart, pieceMapPart, particularsPart, opinionsPart, resultsPart, lotsPart, mountedWeightsPart, remarksPart, methodsPart, conductPart, limitsPart, signaturesPart, itemsPart,
  custodyPart, rawRecordsPart,
]);
export type ReportSection = z.infer<typeof reportSection>;
export type SectionId = ReportSection['section'];
export type SectionPart<Id extends SectionId> = Extract<ReportSection, { section: Id }>;

/** Ids of all sections, for schemas that name them. */
export const SECTION_IDS = reportSection.options.map((option) => option.shape.section.value) as [SectionId, ...SectionId[]];

/** What the registry shows of a section; its `part` and its typed functions stay with the section. */
export type AnySection = {
  readonly id: SectionId; readonly title: string; readonly tells: string; readonly clauses: readonly string[];
  readonly templates: readonly TemplateKind[]; readonly usual: boolean; readonly composed?: boolean;
  build(source: ReportSource): ReportSection | null;
  lines(part: ReportSection): SectionLine[];
};

/** A definition is only ever handed the part that it built: `lines` is called through the section's own id. */
const any = (definition: unknown): AnySection => definition as AnySection;

/** Every section, in the order of a new template. To add one: its file here, its schema in the union above, its drawing in main/print/report/sections. */
export const SECTIONS: readonly AnySection[] = [
  any(amendmentSection), any(overviewSection), any(particularsSection), any(pieceMapSection), any(opinionsSection), any(resultsSection), any(lotsSection), any(mountedWeightsSection), any(remarksSection),
  any(methodsSection), any(conductSection), any(limitsSection), any(signaturesSection),
  any(itemsSection), any(custodySection), any(rawRecordsSection),
];

const byId = new Map(SECTIONS.map((section) => [section.id, section]));

/** The definition of a section. Throws for an id that no section has. */
export function sectionById(id: SectionId): AnySection {
  const found = byId.get(id);
  if (found === undefined) throw new Error(`no section ${id}`);
  return found;
}

/** The sections a kind of report has when nothing was chosen, in order. A report on one stone opens with the opinion on it. */
export function usualSections(kind: TemplateKind): SectionId[] {
  const usual = SECTIONS.filter((section) => section.usual && section.templates.includes(kind)).map((section) => section.id);
  return kind === 'single-stone' ? ['opinions', ...usual.filter((id) => id !== 'opinions')] : usual;
}

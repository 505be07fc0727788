import { SECTIONS, usualSections } from '../sections/index.ts';
import { TEMPLATE_KINDS, TEMPLATE_KIND_WORDS, type TemplateKind } from '../sections/section.ts';
import type { ReportTemplate, SectionChoice } from './template.ts';

export const REPORT_TITLE = 'Diamond screening report';

/** Every section that suits a kind: the usual ones ticked, in their order, then the others. */
function choiceOf(kind: TemplateKind): SectionChoice {
  const usual = usualSections(kind);
  const others = SECTIONS.filter((section) => section.templates.includes(kind) && !section.composed && !usual.includes(section.id)).map((section) => section.id);
  return [...usual.map((id) => ({ id, on: true })), ...others.map((id) => ({ id, on: false }))];
}

/** The templates that the program comes with: version 0 of each kind. */
export const suppliedTemplates = (): ReportTemplate[] => TEMPLATE_KINDS.map((kind) => ({
  templateId: kind, version: 0,
  content: {
    name: TEMPLATE_KIND_WORDS[kind].charAt(0).toUpperCase() + TEMPLATE_KIND_WORDS[kind].slice(1), kind, title: REPORT_TITLE, pageSize: 'house', sections: choiceOf(kind), figuresPerStone: null, logo: true, remarks: '', withdrawn: false,
  },
}));

/** A list of sections as it was kept, with those that came into the program since at its end, not ticked. */
export function completeChoice(kept: SectionChoice, kind: TemplateKind): SectionChoice {
  const known = new Set(kept.map((entry) => entry.id));
  return [...kept, ...choiceOf(kind).filter((entry) => !known.has(entry.id)).map((entry) => ({ ...entry, on: false }))];
}

import { z } from 'zod';
import { SECTION_IDS } from '../sections/index.ts';
import { TEMPLATE_KINDS } from '../sections/section.ts';

export const templateKind = z.enum(TEMPLATE_KINDS);

/** Sections in their order; `on` says which are printed. */
export const sectionChoice = z.array(z.strictObject({ id: z.enum(SECTION_IDS), on: z.boolean() })).superRefine((list, issues) => {
  if (new Set(list.map((entry) => entry.id)).size !== list.length) issues.addIssue({ code: 'custom', message: 'Each section stands in the list once.' });
});
export type SectionChoice = z.infer<typeof sectionChoice>;

/** Most figures that a template gives a stone. */
export const MAX_FIGURES = 12;

export const templateContent = z.strictObject({
  name: z.string().trim().min(1, 'Give the template a name.').max(80),
  kind: templateKind,
  title: z.string().trim().min(1, 'A report needs a title.').max(120),
  /** house: the paper of the laboratory's settings. */
  pageSize: z.enum(['house', 'A4', 'Letter']),
  sections: sectionChoice,
  /** Spectra printed for each stone where nobody chooses them; null: all that its findings rest on. */
  figuresPerStone: z.number().int().min(0).max(MAX_FIGURES).nullable(),
  /** Whether the laboratory's logo is printed, where it has one. */
  logo: z.boolean().default(true),
  /** Remarks that a report by this template begins with; whoever writes it may change them. */
  remarks: z.string().max(6000, 'At most 6000 characters.').default(''),
  /** A template that is no longer offered; drafts that were begun with it go on. */
  withdrawn: z.boolean().default(false),
});
export type TemplateContent = z.infer<typeof templateContent>;

export type ReportTemplate = { readonly templateId: string; readonly version: number; readonly content: TemplateContent };

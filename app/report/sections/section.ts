import type { z } from 'zod';
import type { ReportSource } from '../content/report-source.ts';

/** What a report may be about. */
export const TEMPLATE_KINDS = ['single-stone', 'piece', 'lot', 'case'] as const;
export type TemplateKind = (typeof TEMPLATE_KINDS)[number];

export const TEMPLATE_KIND_WORDS: Readonly<Record<TemplateKind, string>> = {
  'single-stone': 'single stone', piece: 'jewellery piece', lot: 'lot', case: 'whole case',
};

/** One statement of a section, for telling what differs between two revisions: `key` says what it is about, `text` what it says. */
export type SectionLine = { readonly key: string; readonly text: string };

/** A part of a report that a laboratory may choose and place. */
export type SectionDefinition<Part extends { readonly section: string }> = {
  readonly id: Part['section'];
  /** As it is called in the builder. */
  readonly title: string;
  /** One line for who chooses: what it tells. */
  readonly tells: string;
  /** Clauses of ISO/IEC 17025:2017 that stand in it: leaving it out opens them. */
  readonly clauses: readonly string[];
  readonly templates: readonly TemplateKind[];
  /** True where a new template has it ticked. */
  readonly usual: boolean;
  /** True where nobody chooses it: it stands first whenever there is something to say. */
  readonly composed?: boolean;
  /** Schema of its content in the stored model. */
  readonly part: z.ZodType<Part>;
  /** Its content from the records as they stand; null where there is nothing it could say, and it is left out. */
  build(source: ReportSource): Part | null;
  lines(part: Part): SectionLine[];
};

/** Ties a definition to its schema. */
export const defineSection = <Part extends { readonly section: string }>(definition: SectionDefinition<Part>): SectionDefinition<Part> => definition;

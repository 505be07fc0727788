import { z } from 'zod';
import { defineSection } from './section.ts';

export const amendmentPart = z.object({
  section: z.literal('amendment'),
  replaces: z.object({ number: z.string(), revision: z.number(), issued: z.string() }),
  reason: z.string(),
  /** What differs, a sentence each. */
  changes: z.array(z.string()),
});
export type AmendmentPart = z.infer<typeof amendmentPart>;

/** What a revision replaces, why, and what differs. Made when the report is composed, since it compares all other sections. */
export const amendmentSection = defineSection<AmendmentPart>({
  id: 'amendment', title: 'What this revision changes', tells: 'which report it replaces, why, and what differs',
  clauses: ['7.8.8'], templates: ['single-stone', 'piece', 'lot', 'case'], usual: false, composed: true, part: amendmentPart,
  build: () => null,
  // A revision is compared with the one before by what they report, not by what they amend.
  lines: () => [],
});

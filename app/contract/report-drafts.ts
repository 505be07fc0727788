import { z } from 'zod';
import { methodId } from '../domain/method.ts';
import { draftContent } from '../report/draft/draft-content.ts';
import { TEMPLATE_KINDS } from '../report/sections/section.ts';
import { done, filled, id, instant } from './common.ts';
import { changes, reads } from './operation.ts';
import { reportRow } from './report-row.ts';

/** A report in the making, as lists show it. */
export const draftRow = z.object({
  id, caseId: id, caseNumber: z.string(), clientName: z.string(), kind: z.enum(TEMPLATE_KINDS), subjectId: id.nullable(), /** What is reported: "A-1", "A", or the number of the case. */ subject: z.string(), title: z.string(),
  /** The issued report it is to replace. */
  amends: id.nullable(), updatedAt: instant, by: z.string(),
});
export type DraftRow = z.infer<typeof draftRow>;

const clauseState = z.object({
  key: z.string(), clause: z.string(), asks: z.string(), mayNotApply: z.boolean(), state: z.enum(['met', 'missing', 'not-applicable']), missing: z.array(z.string()), where: z.string(),
});

/** A word in free text that should not stand there. */
const wordRemark = z.object({ field: z.string(), word: z.string(), why: z.string(), source: z.string(), index: z.number(), /** In a text that the draft does not hold. */ elsewhere: z.boolean() });
export type WordRemark = z.infer<typeof wordRemark>;

/** What may be chosen for a draft, beside its sections. */
const choices = z.object({
  caseNumber: z.string(), label: z.string(),
  sections: z.array(z.object({ id: z.string(), title: z.string(), tells: z.string() })),
  figures: z.array(z.object({ spectrumId: id, stone: z.string(), run: z.string(), method: methodId, name: z.string(), decisive: z.boolean() })),
  photographs: z.array(z.object({ photographId: id, item: z.string(), caption: z.string() })),
  /** The laboratory's own words under each heading that a report may word for itself. */
  statements: z.object({ place: z.string(), conditions: z.string(), sampling: z.string(), external: z.string() }),
  amends: z.object({ number: z.string(), revision: z.number() }).nullable(),
});
export type DraftChoices = z.infer<typeof choices>;

const looked = z.object({ name: z.string(), pdf: z.instanceof(Uint8Array), clauses: z.array(clauseState), words: z.array(wordRemark), changes: z.array(z.string()) });
export type LookedDraft = z.infer<typeof looked>;

const writers = ['examiner', 'second-examiner', 'appraiser', 'manager'] as const;

export const reportDraftsContract = {
  'reportDrafts.list': reads('anyone', z.strictObject({ caseId: id.nullable() }), z.array(draftRow)),
  /** Begins a report on a stone, an item or the whole case, or a revision of an issued one. No record is made yet. */
  'reportDrafts.create': reads(writers, z.union([
    z.strictObject({ caseId: id, kind: z.enum(TEMPLATE_KINDS), subjectId: id.nullable(), templateId: id.optional() }),
    z.strictObject({ amends: id }),
  ]), z.object({ draftId: id })),
  'reportDrafts.open': reads('anyone', z.strictObject({ draftId: id }), z.object({ caseId: id, content: draftContent, choices })),
  'reportDrafts.save': reads(writers, z.strictObject({ draftId: id, content: draftContent }), done),
  'reportDrafts.discard': reads(writers, z.strictObject({ draftId: id }), done),
  /** The pages as they would be issued now, how they stand with the standard, and words to look at again. Keeps nothing. */
  'reportDrafts.look': reads('anyone', z.strictObject({ draftId: id, content: draftContent }), looked),
  /**
   * Numbers and freezes the draft, which is then gone. `standing`: the words that should not stand in it by the rules of naming, as the
   * person who issues it saw them, and why they are to stand; refused where one stands that is not among them. Kept in the audit ledger.
   */
  'reportDrafts.issue': changes(['appraiser', 'manager'], z.strictObject({
    draftId: id,
    standing: z.strictObject({ words: z.array(z.string().max(200)).max(500), reason: filled('Write the reason; without one the report is not issued.', 400) }).optional(),
  }), reportRow),
  'reports.withdraw': changes(['appraiser', 'manager'], z.strictObject({ reportId: id, reason: filled('Write why the report is withdrawn.', 2000) }), reportRow),
};

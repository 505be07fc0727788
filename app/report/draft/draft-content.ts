import { z } from 'zod';
import { sectionChoice, templateKind } from '../templates/template.ts';

const text = (max: number) => z.string().max(max, `At most ${max} characters.`);

/** What a person chose and wrote for one report; everything else comes from the records. */
export const draftContent = z.strictObject({
  templateId: z.string().max(60), templateVersion: z.number().int().min(0),
  subject: z.strictObject({ kind: templateKind, /** Stone or item; null: the whole case. */ id: z.string().max(60).nullable() }),
  title: z.string().trim().min(1, 'A report needs a title.').max(120),
  pageSize: z.enum(['A4', 'Letter']),
  sections: sectionChoice,
  /** Spectra to print, in order; null: those the findings rest on, as many as the template gives each stone. */
  figures: z.array(z.string().max(60)).max(600).nullable(),
  /** Photographs to print, in order; null: all. */
  photographs: z.array(z.string().max(60)).max(600).nullable(),
  remarks: text(6000),
  /** Empty: the laboratory's text stands. */
  statements: z.strictObject({ place: text(400), conditions: text(800), sampling: text(800), external: text(800) }),
  /** Clauses that do not apply to this report, by key, with the reason. */
  notApplicable: z.record(z.string().max(40), text(400)),
  /** The issued report that this one is to replace, and why. */
  amends: z.string().max(60).nullable(), reason: text(2000),
});
export type DraftContent = z.infer<typeof draftContent>;

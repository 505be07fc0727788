import { z } from 'zod';
import { TEMPLATE_KINDS } from '../report/sections/section.ts';
import { templateContent } from '../report/templates/template.ts';
import { textKind } from '../report/texts/text-kinds.ts';
import { day, filled, id, instant, line, nothing } from './common.ts';
import { changes, reads } from './operation.ts';

const kinds = z.array(z.enum(TEMPLATE_KINDS));

export const houseTextVersion = z.object({ kind: textKind, version: z.number(), text: z.string(), note: z.string(), at: instant, by: z.string() });
export type HouseTextVersion = z.infer<typeof houseTextVersion>;

export const templateView = z.object({ templateId: z.string(), version: z.number(), content: templateContent });
export type TemplateView = z.infer<typeof templateView>;

/** Everything the house needs to make and change templates. */
export const templateDesk = z.object({
  /** The newest version of each, those no longer offered as well, with how many drafts were begun with it. */
  templates: z.array(templateView.extend({ supplied: z.boolean(), drafts: z.number() })),
  /** Every version that was written, newest first. */
  versions: z.array(templateView.extend({ at: instant, by: z.string() })),
  /** The templates as the program came with them. */
  supplied: z.array(templateView),
  /** The sections there are, with the clauses of ISO/IEC 17025:2017 that stand in each. */
  sections: z.array(z.object({ id: z.string(), title: z.string(), tells: z.string(), clauses: z.array(z.string()) })),
});
export type TemplateDesk = z.infer<typeof templateDesk>;

/** Which kinds of report a person may issue, from which day. */
export const authorisationView = z.object({ holderId: id, holder: z.string(), kinds, since: day, note: z.string(), at: instant, by: z.string() });
export type AuthorisationView = z.infer<typeof authorisationView>;

/** What a laboratory words and decides for its reports; every change is a new version and stays readable. */
export const reportHouseContract = {
  'houseTexts.list': reads('anyone', nothing, z.object({ current: z.array(z.object({ kind: textKind, version: z.number(), text: z.string() })), versions: z.array(houseTextVersion) })),
  'houseTexts.write': changes(['manager'], z.strictObject({ kind: textKind, text: line(6000), note: filled('Write why the text is changed.', 400) }), z.object({ kind: textKind, version: z.number(), text: z.string() })),
  'reportTemplates.list': reads('anyone', nothing, z.array(templateView)),
  'reportTemplates.desk': reads('anyone', nothing, templateDesk),
  /** The pages a template would make of the newest case that has something of its kind; `of` null: there is none yet. */
  'reportTemplates.look': reads('anyone', z.strictObject({ content: templateContent }), z.object({ of: z.string().nullable(), pdf: z.instanceof(Uint8Array).nullable() })),
  'reportTemplates.save': changes(['manager'], z.strictObject({ templateId: id.nullable(), content: templateContent }), templateView),
  'authorisations.list': reads('anyone', nothing, z.array(authorisationView)),
  'authorisations.write': changes(['manager'], z.strictObject({ holderId: id, kinds, since: day, note: line(400) }), z.array(authorisationView)),
};

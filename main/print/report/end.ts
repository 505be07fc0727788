import { paragraph } from '../blocks/paragraph.ts';
import { TEXT } from '../paper.ts';
import type { ReportContext } from './context.ts';

/** Not which key: the pages are drawn before they are signed. */
const SIGNED = 'This PDF file carries the laboratory’s signature, attached as signature.txt: with the laboratory’s public key anyone can tell whether a single byte of it was changed. A print on paper, or a file made by printing, carries none.';

/** The end mark, and what a reader must know of the print itself. */
export function drawEnd({ model, sheet, digest, enclosed, signed }: ReportContext, name: string): void {
  const section = sheet.child(sheet.root, 'Sect', { title: 'End of report' });
  const notice = sheet.fonts.notice();
  sheet.ensure(signed ? 94 : 70);
  sheet.y += 14;
  if (notice) paragraph(sheet, section, notice, { style: TEXT.warnSmall, after: 6 });
  sheet.rule(sheet.y, 'line', 0.6);
  sheet.y += 6;
  paragraph(sheet, section, model.draft ? 'End of draft.' : `End of report ${name}.`, { style: TEXT.strong });
  paragraph(sheet, section, enclosed ? 'SHA-256 of the attached report.json, which holds what this report says (canonical JSON, RFC 8785):' : 'SHA-256 of what this report says (canonical JSON, RFC 8785):', { style: TEXT.small });
  paragraph(sheet, section, digest, { style: TEXT.digest });
  if (signed) paragraph(sheet, section, SIGNED, { style: TEXT.small });
}

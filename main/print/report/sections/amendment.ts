import type { AmendmentPart } from '../../../../app/report/sections/amendment.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { TEXT } from '../../paper.ts';
import { remember, type ReportContext } from '../context.ts';

/** ISO/IEC 17025:2017, 7.8.8.2 and 7.8.8.3, ask for such words and for what is replaced. */
const amends = ({ number, revision, issued }: AmendmentPart['replaces']): string => `Amendment to report no. ${number}, revision ${revision}, issued ${issued}, which it replaces.`;

export function drawAmendment(context: ReportContext, part: AmendmentPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'What this revision changes' });
  heading(sheet, section, 'What this revision changes', { before: 0 });
  remember(context, 'amendment');
  paragraph(sheet, section, amends(part.replaces), { style: TEXT.strong, after: 2 });
  paragraph(sheet, section, part.reason.trim() === '' ? 'No reason has been given.' : `Reason: ${part.reason}`, { after: 3 });
  for (const change of part.changes) paragraph(sheet, section, `– ${change}`, { style: TEXT.lead, after: 2 });
  sheet.y += 6;
  sheet.rule(sheet.y, 'line', 0.6);
  sheet.y += 9;
}

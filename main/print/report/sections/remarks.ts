import type { RemarksPart } from '../../../../app/report/sections/remarks.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { remember, type ReportContext } from '../context.ts';

export function drawRemarks(context: ReportContext, part: RemarksPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Remarks' });
  heading(sheet, section, 'Remarks');
  remember(context, 'remarks');
  for (const text of part.paragraphs) paragraph(sheet, section, text, { after: 4 });
}

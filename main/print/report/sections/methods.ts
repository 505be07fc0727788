import type { MethodsPart } from '../../../../app/report/sections/methods.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { cell, table } from '../../blocks/table.ts';
import { TEXT } from '../../paper.ts';
import { remember, type ReportContext } from '../context.ts';

export function drawMethods(context: ReportContext, part: MethodsPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Instruments' });
  heading(sheet, section, 'Methods and instruments');
  remember(context, 'methods');
  if (part.instruments.length === 0) paragraph(sheet, section, 'No instrument was used.', { style: TEXT.lead });
  else {
    table(sheet, section, [{ head: 'Instrument', share: 26 }, { head: 'Methods', share: 26 }, { head: 'Settings', share: 26, style: TEXT.lead }, { head: 'State on the day', share: 22 }],
      part.instruments.map((entry) => [cell(entry.name), cell(entry.methods), cell(entry.settings), cell(entry.state)]));
  }
  for (const text of part.texts) {
    heading(sheet, section, text.title, { level: 3, style: TEXT.strong, before: 8, after: 2, keepWith: 30, bookmark: null });
    for (const line of text.paragraphs) paragraph(sheet, section, line, { style: TEXT.lead, after: 3 });
  }
}

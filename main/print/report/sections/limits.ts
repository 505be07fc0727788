import type { LimitsPart } from '../../../../app/report/sections/limits.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { TEXT } from '../../paper.ts';
import { remember, type ReportContext } from '../context.ts';

export function drawLimits(context: ReportContext, part: LimitsPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Scope and limits' });
  heading(sheet, section, 'Scope and limits');
  remember(context, 'limits');
  paragraph(sheet, section, part.scope.trim() === '' ? 'The laboratory has not written down the scope of its screening.' : part.scope, { style: TEXT.lead, after: 4 });
  for (const limit of [...part.limits, ...part.disclaimer].filter((text) => text.trim() !== '')) paragraph(sheet, section, limit, { style: TEXT.lead, after: 4 });
}

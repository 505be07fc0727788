import type { MountedWeightsPart } from '../../../../app/report/sections/mounted-weights.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { cell, table } from '../../blocks/table.ts';
import { TEXT } from '../../paper.ts';
import { remember, type ReportContext } from '../context.ts';

const AFTER_TABLE = 5;

export function drawMountedWeights(context: ReportContext, part: MountedWeightsPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Estimated weights of mounted stones' });
  heading(sheet, section, 'Estimated weights of mounted stones');
  remember(context, 'mounted-weights');
  paragraph(sheet, section, 'Estimated from the measures of the stones in their setting by the usual factors for diamond of each cut; not weighed. Uncertainties are expanded (k = 2).', { style: TEXT.small, after: 4 });
  for (const piece of part.pieces) {
    table(sheet, section, [
      { head: 'Stone', share: 9, style: TEXT.mono, rowHead: true },
      { head: 'Cut', share: 17 },
      { head: 'Measures', share: 25, style: TEXT.monoSmall },
      { head: 'Rests on', share: 27, style: TEXT.smallInk },
      { head: 'Estimate', share: 22, style: TEXT.monoSmall, align: 'right' },
    ], piece.stones.map((stone) => [cell(stone.label), cell(stone.cut), cell(stone.measures), cell(stone.rests), cell(stone.weight)]));
    sheet.y += AFTER_TABLE;
    paragraph(sheet, section, `Item ${piece.item}: ${piece.total}`, { after: 6 });
  }
}

import type { CustodyPart } from '../../../../app/report/sections/custody.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { cell, table } from '../../blocks/table.ts';
import { TEXT } from '../../paper.ts';
import { remember, type ReportContext } from '../context.ts';

export function drawCustody(context: ReportContext, part: CustodyPart): void {
  const { model, sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Custody log' });
  heading(sheet, section, 'Custody log');
  remember(context, 'custody');
  if (part.entries.length === 0) {
    paragraph(sheet, section, 'The custody ledger has no entry for these items.', { style: TEXT.warn });
    return;
  }
  paragraph(sheet, section, `Times in ${model.laboratory.zone}. Each entry carries the digest of the one before; the first digits of its own stand at the right.`, { style: TEXT.small, after: 4 });
  table(sheet, section, [
    { head: 'When', share: 24, style: TEXT.monoSmall, rowHead: true },
    { head: 'Item', share: 6, style: TEXT.monoSmall },
    { head: 'What', share: 37, style: TEXT.smallInk },
    { head: 'Who', share: 17, style: TEXT.smallInk },
    { head: 'Weight', share: 13, style: TEXT.monoSmall, align: 'right' },
    { head: 'Digest', share: 12, style: TEXT.monoSmall },
  ], part.entries.map((entry) => [cell(entry.at), cell(entry.item), cell(entry.what), cell(entry.who), cell(entry.weight), cell(entry.hash.slice(0, 10))]), { padding: 2.4 });
}

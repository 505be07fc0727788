import type { RawRecordsPart } from '../../../../app/report/sections/raw-records.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { cell, table } from '../../blocks/table.ts';
import { TEXT } from '../../paper.ts';
import { remember, type ReportContext } from '../context.ts';

export function drawRawRecords(context: ReportContext, part: RawRecordsPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Raw records' });
  heading(sheet, section, 'Raw records');
  remember(context, 'raw-records');
  if (part.records.length === 0) {
    paragraph(sheet, section, 'No instrument file belongs to this report.', { style: TEXT.lead });
    return;
  }
  paragraph(sheet, section, 'The files as the instruments wrote them, kept byte for byte, each with its SHA-256.', { style: TEXT.small, after: 4 });
  table(sheet, section, [
    { head: 'Run', share: 6, style: TEXT.monoSmall, rowHead: true },
    { head: 'File', share: 23, style: TEXT.smallInk },
    { head: 'Size', share: 10, style: TEXT.monoSmall, align: 'right' },
    // Wide enough for all 64 digits on one line, so that they can be copied in one piece.
    { head: 'SHA-256', share: 61, style: TEXT.digest },
  ], part.records.map((entry) => [cell(entry.run), cell(entry.name), cell(entry.size), cell(entry.sha256)]), { padding: 2.4 });
}

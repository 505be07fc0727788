import type { RawRecordsPart } from '../../../../app/report/sections/raw-records.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { cell, table, type Cell } from '../../blocks/table.ts';
import { TEXT } from '../../paper.ts';
import { remember, type ReportContext } from '../context.ts';

const KEPT_WHOLE = 'The files as the instruments wrote them, kept byte for byte, each with its SHA-256.';

/** What a reader must know of the files: whether they travel with the pages. */
function aboutRecords({ model, enclosed }: ReportContext, { records }: RawRecordsPart): string {
  if (!enclosed) return model.draft ? `${KEPT_WHOLE} They are attached to the report when it is issued.` : KEPT_WHOLE;
  const missing = records.filter((entry) => entry.attached === false).length;
  if (missing === 0) return `${KEPT_WHOLE} All are attached to this PDF file, together with report.json, which says for a program what this report says.`;
  return `${KEPT_WHOLE} They are attached to this PDF file, together with report.json, except ${missing === 1 ? 'the one' : `the ${missing}`} marked “not attached”, too large to travel with it: the laboratory keeps ${missing === 1 ? 'it' : 'them'}.`;
}

const nameCell = ({ name, attached }: RawRecordsPart['records'][number]): Cell =>
  ({ parts: [{ text: name }, { text: attached === false ? 'not attached' : '', style: TEXT.warnSmall }] });

export function drawRawRecords(context: ReportContext, part: RawRecordsPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Raw records' });
  heading(sheet, section, 'Raw records');
  remember(context, 'raw-records');
  if (part.records.length === 0) {
    paragraph(sheet, section, 'No instrument file belongs to this report.', { style: TEXT.lead });
    return;
  }
  paragraph(sheet, section, aboutRecords(context, part), { style: TEXT.small, after: 4 });
  table(sheet, section, [
    { head: 'Run', share: 6, style: TEXT.monoSmall, rowHead: true },
    { head: 'File', share: 23, style: TEXT.smallInk },
    { head: 'Size', share: 10, style: TEXT.monoSmall, align: 'right' },
    // Wide enough for all 64 digits on one line, so that they can be copied in one piece.
    { head: 'SHA-256', share: 61, style: TEXT.digest },
  ], part.records.map((entry) => [cell(entry.run), nameCell(entry), cell(entry.size), cell(entry.sha256)]), { padding: 2.4 });
}

import { countWords } from '../../../app/report/count-words.ts';
import { heading } from '../blocks/heading.ts';
import { letterhead } from '../blocks/letterhead.ts';
import { paragraph } from '../blocks/paragraph.ts';
import { TEXT } from '../paper.ts';
import type { ReportContext } from './context.ts';

/** The upper part of page 1: who reports, what it is, for whom. The last sentence is asked for by ISO/IEC 17025:2017, 7.8.2.1 l and 7.8.2.2. */
export function drawOpening({ model, sheet }: ReportContext): void {
  letterhead(sheet, sheet.root, model.laboratory);
  heading(sheet, sheet.root, model.title, { level: 1, style: TEXT.title, before: 18, after: 1, keepWith: 0, bookmark: null });
  const count = model.subject.stones;
  const stones = count === 1 ? 'the stone' : `the ${countWords(count, 'stone').replace(/^no /, '')}`;
  const relates = count === 0 ? 'No stone has been tested.' : `Results relate only to ${stones} described here, as received.`;
  const issued = model.draft ? `Draft for ${model.client.name}, not issued.` : `Issued ${model.issued} for ${model.client.name}.`;
  paragraph(sheet, sheet.root, `${issued} ${relates}`, { style: TEXT.lead, after: 9 });
  sheet.rule(sheet.y, 'ink', 0.9);
  sheet.y += 9;
}

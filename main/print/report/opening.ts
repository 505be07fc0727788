import { countWords } from '../../../app/report/count-words.ts';
import { heading } from '../blocks/heading.ts';
import { letterhead } from '../blocks/letterhead.ts';
import { paragraph } from '../blocks/paragraph.ts';
import { TEXT } from '../paper.ts';
import type { ReportContext } from './context.ts';

/** The upper part of page 1: who reports, what it is, for whom. */
export function drawOpening({ model, sheet }: ReportContext): void {
  letterhead(sheet, sheet.root, model.laboratory);
  heading(sheet, sheet.root, model.title, { level: 1, style: TEXT.title, before: 18, after: 1, keepWith: 0, bookmark: null });
  const stones = model.stones.length === 1 ? 'the stone' : `the ${countWords(model.stones.length, 'stone').replace(/^no /, '')}`;
  const relates = model.stones.length === 0 ? 'No stone has been tested.' : `Results relate only to ${stones} described here, as received.`;
  const issued = model.draft ? `Draft for ${model.client.name}, not issued.` : `Issued ${model.issued} for ${model.client.name}.`;
  paragraph(sheet, sheet.root, `${issued} ${relates}`, { style: TEXT.lead, after: 9 });
  sheet.rule(sheet.y, 'ink', 0.9);
  sheet.y += 9;
}

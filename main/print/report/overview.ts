import { capitalise } from '../../../app/report/count-words.ts';
import { drawGlyph } from '../blocks/glyph.ts';
import { heading } from '../blocks/heading.ts';
import { cell, table, type Cell } from '../blocks/table.ts';
import { TEXT } from '../paper.ts';
import { remember, type ReportContext, type Stone } from './context.ts';

const GLYPH_SIDE = 9.5;

function opinionCell(context: ReportContext, stone: Stone): Cell {
  const { conclusion } = stone;
  if (!conclusion) return cell('No conclusion recorded', TEXT.warn);
  return {
    parts: [{ text: capitalise(conclusion.words) }],
    sign: { width: 15, draw: (x, y) => drawGlyph(context.sheet, conclusion.id, x, y + (TEXT.body.pitch - GLYPH_SIDE) / 2 + 0.4, GLYPH_SIDE) },
  };
}

/** The opinions of a report on several stones at a glance, with the page on which each stone is told. */
export function drawOverview(context: ReportContext): void {
  const { model, sheet } = context;
  heading(sheet, sheet.root, 'Opinions of the examiners', { before: 4, bookmark: 'Opinions' });
  remember(context, 'overview');
  table(sheet, sheet.root, [
    { head: 'Stone', share: 10, style: TEXT.mono, rowHead: true },
    { head: 'Described as', share: 27 },
    { head: 'Opinion', share: 57 },
    { head: 'Page', share: 6, align: 'right' },
  ], model.stones.map((stone, index) => [
    cell(stone.label),
    { parts: [{ text: stone.heading, style: TEXT.lead, atMost: 3 }] },
    opinionCell(context, stone),
    { parts: [{ text: '' }], promise: (onPage, x, y, element) => context.promises.push({ onPage, x, y, element, stone: index }) },
  ]));
}

/** Writes the page numbers into the table once every stone has its page. */
export function fillPageNumbers({ sheet, pages, promises }: ReportContext): void {
  for (const promise of promises) {
    const page = pages.get(`stone ${promise.stone}`);
    if (page === undefined) continue;
    sheet.doc.switchToPage(promise.onPage);
    sheet.within(promise.element, 'TD', () => sheet.put(String(page + 1), promise.x, promise.y, TEXT.mono, 'right'));
  }
}

import { capitalise } from '../../../../app/report/count-words.ts';
import { sectionOf } from '../../../../app/report/report-model.ts';
import type { OverviewPart } from '../../../../app/report/sections/overview.ts';
import { drawGlyph } from '../../blocks/glyph.ts';
import { heading } from '../../blocks/heading.ts';
import { cell, table, type Cell } from '../../blocks/table.ts';
import { TEXT } from '../../paper.ts';
import { remember, stoneMark, type ReportContext } from '../context.ts';
import { drawFigure } from '../figures.ts';

const GLYPH_SIDE = 9.5;
/** Height of the figure in parts of its width: the table and the client must still stand on page 1. */
const PROPORTION = 0.26;

function opinionCell(context: ReportContext, { opinion, withheld }: OverviewPart['stones'][number]): Cell {
  if (!opinion) return cell(withheld === true ? 'Concluded; shown after you have stated yours' : 'No conclusion recorded', TEXT.warn);
  return {
    parts: [{ text: capitalise(opinion.words) }],
    sign: { width: 15, draw: (x, y) => drawGlyph(context.sheet, opinion.id, x, y + (TEXT.body.pitch - GLYPH_SIDE) / 2 + 0.4, GLYPH_SIDE) },
  };
}

/** Stones up to which the figure stands on page 1 beside the whole table. */
const FIGURE_UP_TO = 12;

function drawLeadingFigure(context: ReportContext, part: OverviewPart): void {
  const stone = part.figure === null ? undefined : sectionOf(context.model, 'results')?.stones[part.figure.stone];
  const figure = part.figure === null ? undefined : stone?.figures[part.figure.figure];
  if (stone === undefined || figure === undefined || part.stones.length > FIGURE_UP_TO) return;
  drawFigure(context, context.sheet.root, {
    ...figure, heading: `Stone ${stone.label}: ${figure.heading.charAt(0).toLocaleLowerCase('en')}${figure.heading.slice(1)}`,
    caption: 'One of the spectra of this report; it is told with the results of its stone.',
  }, { wanted: PROPORTION, least: PROPORTION });
}

/** The opinions of a report on several stones at a glance, with the page on which each stone is told. */
export function drawOverview(context: ReportContext, part: OverviewPart): void {
  const { sheet } = context;
  heading(sheet, sheet.root, 'Opinions of the examiners at a glance', { before: 4, bookmark: 'Overview' });
  remember(context, 'overview');
  table(sheet, sheet.root, [
    { head: 'Stone', share: 10, style: TEXT.mono, rowHead: true },
    { head: 'Described as', share: 27 },
    { head: 'Opinion', share: 57 },
    { head: 'Page', share: 6, align: 'right' },
  ], part.stones.map((stone) => [
    cell(stone.label),
    { parts: [{ text: stone.heading, style: TEXT.lead, atMost: 3 }] },
    opinionCell(context, stone),
    { parts: [{ text: '' }], promise: (onPage, x, y, element) => context.promises.push({ onPage, x, y, element, marks: [stoneMark('results', stone.label), stoneMark('opinions', stone.label)] }) },
  ]));
  drawLeadingFigure(context, part);
}

/** Writes the page numbers into the table once every stone has its page. */
export function fillPageNumbers({ sheet, pages, promises }: ReportContext): void {
  for (const promise of promises) {
    const page = promise.marks.map((mark) => pages.get(mark)).find((found) => found !== undefined);
    if (page === undefined) continue;
    sheet.doc.switchToPage(promise.onPage);
    sheet.within(promise.element, 'TD', () => sheet.put(String(page + 1), promise.x, promise.y, TEXT.mono, 'right'));
  }
}

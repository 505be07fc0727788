import { layoutFigure } from '../../../app/figure/layout-figure.ts';
import type { ResultsPart } from '../../../app/report/sections/results.ts';
import { paragraph } from '../blocks/paragraph.ts';
import { drawDrawing, measureOnPaper } from '../draw-drawing.ts';
import { TEXT } from '../paper.ts';
import type { Element } from '../sheet.ts';
import type { ReportContext } from './context.ts';

export type ReportFigure = ResultsPart['stones'][number]['figures'][number];

/** Measures of a figure in points, in keeping with the page's type. */
const PAPER_STYLE = {
  tickSize: 7.8, captionSize: 7.8, labelSize: 8.2, curveWidth: 0.9, lineWidth: 0.7, hairline: 0.5, stripHeight: 3.8, stripGap: 1.5,
  rowHeight: 11.2, margin: 2, tickGap: 5, labelGap: 6.5, lineOffset: 3, lineClearance: 2, namePositionGap: 3.6,
} as const;

/** Height of a figure in parts of its width: taller where the report tells of one stone; down to the least where it then still fits on the page. */
export const PROPORTION = { single: 0.39, many: 0.32, least: 0.29 } as const;
const BEFORE = 14;
const AROUND = 4;
/** Lines of the caption that must stand on the figure's page. */
const CAPTION_KEPT = 4;

/** One spectrum with heading and caption on one page. Heights in parts of the width. */
export function drawFigure({ sheet }: ReportContext, section: Element, entry: ReportFigure, { wanted, least }: { readonly wanted: number; readonly least: number }): void {
  const headLines = sheet.lines(entry.heading, sheet.width, TEXT.section, 2);
  const caption = sheet.lines(entry.caption, sheet.width, TEXT.small);
  const beside = BEFORE + headLines.length * TEXT.section.pitch + 2 * AROUND + Math.min(caption.length, CAPTION_KEPT) * TEXT.small.pitch;
  const fits = sheet.room - beside >= sheet.width * least;
  const height = fits ? Math.min(sheet.width * wanted, sheet.room - beside) : sheet.width * wanted;
  sheet.ensure(beside + height);
  if (!sheet.atTop) sheet.y += BEFORE;
  sheet.within(sheet.child(section, 'H3'), 'H3', () => {
    for (const line of headLines) {
      sheet.put(line, sheet.left, sheet.y, TEXT.section);
      sheet.y += TEXT.section.pitch;
    }
  });
  sheet.y += AROUND;
  const { drawing } = layoutFigure(entry.figure, { width: sheet.width, height, measureText: measureOnPaper(sheet), style: PAPER_STYLE });
  sheet.within(sheet.child(section, 'Figure', { alt: entry.alt, bbox: [sheet.left, sheet.y, sheet.right, sheet.y + height] } as PDFKit.Mixins.StructureElementOptions), 'Figure',
    () => drawDrawing(sheet, drawing, sheet.left, sheet.y));
  sheet.y += height + AROUND;
  if (entry.caption.trim() !== '') paragraph(sheet, section, entry.caption, { style: TEXT.small, type: 'Caption' });
}

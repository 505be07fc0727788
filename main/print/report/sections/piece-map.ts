import { gridAspect, gridDrawing } from '../../../../app/piece/grid-drawing.ts';
import { labelMarks, type MarkLabel } from '../../../../app/piece/label-marks.ts';
import { apply, inSight, pointsPerMillimetre, shownPicture } from '../../../../app/piece/picture-view.ts';
import { scaleBar } from '../../../../app/piece/scale-bar.ts';
import { capitalise, countWords } from '../../../../app/report/count-words.ts';
import type { PieceMapPart } from '../../../../app/report/sections/piece-map.ts';
import { drawGlyph } from '../../blocks/glyph.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { cell, table, type Cell } from '../../blocks/table.ts';
import { drawDrawing } from '../../draw-drawing.ts';
import { openPicture } from '../../open-picture.ts';
import { PAPER_INKS, TEXT } from '../../paper.ts';
import type { Sheet } from '../../sheet.ts';
import { remember, type ReportContext } from '../context.ts';

type PaperMap = PieceMapPart['maps'][number];
type Element = ReturnType<Sheet['child']>;

/** Measures of a map on paper, points. `around` is the room beside the picture for the numbers. */
const PAPER_MAP = { tallest: 330, around: 30, above: 20, box: 11.4, side: 3.4, glyph: 6.6, gap: 2.2, bar: 90 } as const;
const GRID_WIDTH = 1200;
const LEGEND_GLYPH = 9.5;

/** Size of the upright picture: of the grid where there is none; a square where the picture can't be read. */
function pictureSize({ ground, picture }: PaperMap): { width: number; height: number } {
  if (ground.kind === 'grid') return { width: GRID_WIDTH, height: GRID_WIDTH / gridAspect(ground) };
  return picture ?? { width: GRID_WIDTH, height: GRID_WIDTH };
}

function drawGround(sheet: Sheet, map: PaperMap, x: number, y: number, scale: number): void {
  const { doc } = sheet;
  const size = pictureSize(map);
  const shown = shownPicture(size, map.view);
  const [width, height] = [shown.size.width * scale, shown.size.height * scale];
  const picture = map.picture ? openPicture(doc, map.picture.base64) : null;
  if (map.ground.kind === 'grid') { drawDrawing(sheet, gridDrawing(map.ground, width), x, y); return; }
  if (picture) {
    doc.save().rect(x, y, width, height).clip().translate(x, y).scale(scale).transform(...shown.matrix);
    doc.image(picture.image, 0, 0, { width: size.width, height: size.height });
    doc.restore();
  }
  doc.lineWidth(0.5).strokeColor(PAPER_INKS.line).rect(x, y, width, height).stroke();
}

function drawLabel(sheet: Sheet, label: MarkLabel, mark: PaperMap['marks'][number]): void {
  const { doc } = sheet;
  const { x, y, width, height, leader } = label;
  // Light under dark, so that the line is seen on any picture.
  for (const [ink, weight] of [['#ffffff', 1.7], [PAPER_INKS.ink, 0.6]] as const) doc.lineWidth(weight).strokeColor(ink).moveTo(leader.x1, leader.y1).lineTo(leader.x2, leader.y2).stroke();
  doc.lineWidth(0.5).fillColor('#ffffff').strokeColor(PAPER_INKS.ink3).rect(x, y, width, height).fillAndStroke();
  if (mark.conclusion) drawGlyph(sheet, mark.conclusion.id, x + PAPER_MAP.side, y + (height - PAPER_MAP.glyph) / 2, PAPER_MAP.glyph);
  sheet.put(String(mark.number), x + width - PAPER_MAP.side, y + (height - TEXT.monoSmall.pitch) / 2, TEXT.monoSmall, 'right');
}

function drawScale(sheet: Sheet, map: PaperMap, x: number, bottom: number, scale: number): void {
  const perMillimetre = map.ground.kind === 'grid' ? null : pointsPerMillimetre(pictureSize(map), map.view);
  if (perMillimetre === null) return;
  const bar = scaleBar(perMillimetre * scale, PAPER_MAP.bar);
  const pad = 5;
  sheet.doc.fillColor('#ffffff').rect(x + 8, bottom - 24, bar.length + 2 * pad, 18).fill();
  sheet.put(bar.label, x + 8 + pad + bar.length / 2, bottom - 23, TEXT.monoSmall, 'center');
  sheet.doc.lineWidth(0.9).strokeColor(PAPER_INKS.ink).moveTo(x + 8 + pad, bottom - 9).lineTo(x + 8 + pad + bar.length, bottom - 9).stroke();
}

/** The picture with its numbered marks as vectors over it, as one figure of the page's structure. */
function drawPicture(sheet: Sheet, parent: Element, map: PaperMap): void {
  const size = pictureSize(map);
  const shown = shownPicture(size, map.view);
  const { around, above, side, glyph, gap, box } = PAPER_MAP;
  const scale = Math.min((sheet.width - 2 * around) / shown.size.width, Math.min(PAPER_MAP.tallest, sheet.bodyHeight / 2) / shown.size.height);
  const [width, height] = [shown.size.width * scale, shown.size.height * scale];
  sheet.ensure(height + 2 * above + 2 * TEXT.small.pitch);
  const [x, y] = [sheet.left + (sheet.width - width) / 2, sheet.y + above];
  // What the crop leaves out stands in the legend alone.
  const marks = map.marks.map((mark) => ({ mark, at: apply(shown.matrix, { x: mark.x * size.width, y: mark.y * size.height }) })).filter(({ at }) => inSight(at, shown));
  const placed = marks.map(({ mark, at }) => ({
    id: String(mark.number).padStart(6, '0'), x: x + at.x * scale, y: y + at.y * scale, radius: mark.radius * size.width * scale, height: box,
    width: 2 * side + (mark.conclusion ? glyph + gap : 0) + sheet.fonts.width(String(mark.number), TEXT.monoSmall.font, TEXT.monoSmall.size),
  }));
  const labels = labelMarks(placed, { x: sheet.left, y: sheet.y, width: sheet.width, height: height + 2 * above });
  const alt = `${map.heading}: ${map.ground.kind === 'grid' ? 'a grid' : 'a picture of the piece'} with ${countWords(map.marks.length, 'numbered mark')}; the table that follows says for each number the stone and the opinion.`;
  const figure = sheet.child(parent, 'Figure', { alt, bbox: [sheet.left, sheet.y, sheet.right, y + height + above] } as PDFKit.Mixins.StructureElementOptions);
  sheet.within(figure, 'Figure', () => {
    drawGround(sheet, map, x, y, scale);
    drawScale(sheet, map, x, y + height, scale);
    labels.forEach((label, index) => drawLabel(sheet, label, marks[index]!.mark));
  });
  sheet.y = y + height + above;
}

function opinionCell(sheet: Sheet, { stone, conclusion }: PaperMap['marks'][number]): Cell {
  if (stone === '') return cell('tied to no stone', TEXT.lead);
  if (conclusion === null) return cell('No conclusion recorded', TEXT.warn);
  return {
    parts: [{ text: capitalise(conclusion.words) }],
    sign: { width: 15, draw: (x, y) => drawGlyph(sheet, conclusion.id, x, y + (TEXT.body.pitch - LEGEND_GLYPH) / 2 + 0.4, LEGEND_GLYPH) },
  };
}

/** Every map of the reported pieces, each with its legend: number, stone, opinion in words. */
export function drawPieceMap(context: ReportContext, part: PieceMapPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Map of the piece' });
  const mark = heading(sheet, section, part.maps.length === 1 ? 'Map of the piece' : 'Maps of the pieces', { keepWith: PAPER_MAP.tallest / 2 });
  remember(context, 'piece-map');
  for (const map of part.maps) {
    heading(sheet, section, map.heading, { level: 3, style: TEXT.strong, before: 8, after: 2, keepWith: PAPER_MAP.tallest / 2, ...(mark ? { under: mark } : {}) });
    drawPicture(sheet, section, map);
    paragraph(sheet, section, map.caption, { style: TEXT.small, type: 'Caption', after: 6 });
    table(sheet, section, [
      { head: 'Mark', share: 8, style: TEXT.mono, align: 'right', rowHead: true }, { head: 'Stone', share: 12, style: TEXT.mono }, { head: 'Where it sits', share: 26 }, { head: 'Opinion', share: 54 },
    ], map.marks.map((one) => [cell(String(one.number)), cell(one.stone), { parts: [{ text: one.position, style: TEXT.lead, atMost: 2 }] }, opinionCell(sheet, one)]));
    for (const sentence of map.open) paragraph(sheet, section, sentence, { style: TEXT.small, after: 2 });
    sheet.y += 6;
  }
}

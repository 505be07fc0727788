import { type Drawing, isRgb, type MeasureText, type Primitive } from '../../app/figure/drawing.ts';
import { PAPER_INKS } from './paper.ts';
import type { Sheet } from './sheet.ts';

/** Widths as the page's own faces give them, so that labels keep clear of each other in print too. */
export const measureOnPaper = (sheet: Sheet): MeasureText => (text, font, size) => sheet.fonts.width(text, font, size);

/** The library's typings know one length and one gap only. */
const dashed = (doc: PDFKit.PDFDocument, lengths: readonly number[]): void => { (doc as unknown as { dash(lengths: number[]): void }).dash([...lengths]); };

function drawPrimitive(sheet: Sheet, primitive: Primitive): void {
  const { doc } = sheet;
  switch (primitive.kind) {
    case 'line':
      if (primitive.dash) dashed(doc, primitive.dash);
      doc.lineWidth(primitive.width).strokeColor(PAPER_INKS[primitive.ink]).moveTo(primitive.x1, primitive.y1).lineTo(primitive.x2, primitive.y2).stroke();
      if (primitive.dash) doc.undash();
      return;
    case 'path': {
      if (primitive.points.length < 4) return;
      const { x, y, width, height } = primitive.clip;
      doc.save().rect(x, y, width, height).clip();
      if (primitive.dash) dashed(doc, primitive.dash);
      doc.lineWidth(primitive.width).lineJoin('round').strokeColor(PAPER_INKS[primitive.ink]).moveTo(primitive.points[0]!, primitive.points[1]!);
      for (let i = 2; i + 1 < primitive.points.length; i += 2) doc.lineTo(primitive.points[i]!, primitive.points[i + 1]!);
      doc.stroke().restore();
      return;
    }
    case 'rect':
      doc.fillColor(isRgb(primitive.fill) ? primitive.fill : PAPER_INKS[primitive.fill]).rect(primitive.x, primitive.y, primitive.width, primitive.height).fill();
      return;
    case 'text': {
      const width = sheet.fonts.width(primitive.text, primitive.font, primitive.size);
      const shift = primitive.anchor === 'start' ? 0 : primitive.anchor === 'middle' ? width / 2 : width;
      sheet.putAt(primitive.text, primitive.x - shift, primitive.y, primitive);
    }
  }
}

/** Draws a drawing as vectors with its upper left corner at x, y. */
export function drawDrawing(sheet: Sheet, drawing: Drawing, x: number, y: number): void {
  sheet.doc.save().translate(x, y);
  for (const primitive of drawing.primitives) drawPrimitive(sheet, primitive);
  sheet.doc.restore();
}

import type { ConclusionId } from '../../../app/domain/conclusion.ts';
import { CONCLUSION_GLYPHS, GLYPH_BOX, GLYPH_DASH, GLYPH_STROKE } from '../../../app/report/conclusion-glyph.ts';
import { PAPER_INKS } from '../paper.ts';
import type { Sheet } from '../sheet.ts';

/** Draws the sign of a conclusion in a square of the given side; the words always stand beside it, so it carries no text of its own. */
export function drawGlyph(sheet: Sheet, id: ConclusionId, x: number, y: number, side: number): void {
  const { doc } = sheet;
  const glyph = CONCLUSION_GLYPHS[id];
  const colour = PAPER_INKS[glyph.ink];
  doc.save().translate(x, y).scale(side / GLYPH_BOX).lineWidth(GLYPH_STROKE).lineJoin('miter').fillColor(colour).strokeColor(colour);
  for (const part of glyph.parts) {
    if (part.dashed) doc.dash(GLYPH_DASH[0], { space: GLYPH_DASH[1] });
    doc.path(part.d);
    if (part.fill) doc.fill();
    else doc.stroke();
    if (part.dashed) doc.undash();
  }
  doc.restore();
}

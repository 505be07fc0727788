import { isRgb, type Drawing, type Primitive } from '../../app/figure/drawing.ts';
import type { Theme } from '../../app/figure/inks.ts';
import { cssFont } from './measure-text.ts';

function stroke(context: CanvasRenderingContext2D, p: { readonly width: number; readonly dash?: readonly number[] }, colour: string): void {
  context.strokeStyle = colour;
  context.lineWidth = p.width;
  context.setLineDash(p.dash ? [...p.dash] : []);
  context.stroke();
}

function draw(context: CanvasRenderingContext2D, p: Primitive, theme: Theme): void {
  switch (p.kind) {
    case 'line':
      context.beginPath();
      context.moveTo(p.x1, p.y1);
      context.lineTo(p.x2, p.y2);
      stroke(context, p, theme.inks[p.ink]);
      return;
    case 'path':
      context.save();
      context.beginPath();
      context.rect(p.clip.x, p.clip.y, p.clip.width, p.clip.height);
      context.clip();
      context.beginPath();
      for (let i = 0; i + 1 < p.points.length; i += 2) {
        if (i === 0) context.moveTo(p.points[0]!, p.points[1]!);
        else context.lineTo(p.points[i]!, p.points[i + 1]!);
      }
      context.lineJoin = 'round';
      stroke(context, p, theme.inks[p.ink]);
      context.restore();
      return;
    case 'rect':
      context.fillStyle = isRgb(p.fill) ? p.fill : theme.inks[p.fill];
      context.fillRect(p.x, p.y, p.width, p.height);
      return;
    case 'text':
      context.font = cssFont(p.font, p.size);
      context.fillStyle = theme.inks[p.ink];
      context.textAlign = p.anchor === 'middle' ? 'center' : p.anchor;
      context.fillText(p.text, p.x, p.y);
  }
}

/** Draws what the layout says, with the faces the window has loaded, `scale` dots for each px. */
export function drawingToCanvas(drawing: Drawing, theme: Theme, scale: number): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(drawing.width * scale);
  canvas.height = Math.round(drawing.height * scale);
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('this window gives no drawing surface');
  context.scale(scale, scale);
  context.fillStyle = theme.grounds.sheet;
  context.fillRect(0, 0, drawing.width, drawing.height);
  context.textBaseline = 'alphabetic';
  for (const primitive of drawing.primitives) draw(context, primitive, theme);
  return canvas;
}

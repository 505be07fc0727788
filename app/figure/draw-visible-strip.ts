import type { Ink } from './figure-model.ts';
import type { Primitive, Rect, Rgb } from './drawing.ts';
import { pxToX } from './axis-scale.ts';
import type { FigureStyle } from './figure-style.ts';
import { visibleColour } from './visible-colour.ts';

/** Neighbouring steps overlap a little, so that no background shows between them. */
const OVERLAP = 0.4;

/** The strip under a nanometre axis: the colour of the light at each place, quiet grey where the eye sees none. */
export function drawVisibleStrip(xRange: readonly [number, number], plot: Rect, style: FigureStyle): Primitive[] {
  const y = plot.y + plot.height + style.stripGap;
  const steps = Math.max(1, Math.round(plot.width / style.stripStep));
  const step = plot.width / steps;
  const out: Primitive[] = [];
  let start = 0;
  let fill: Ink | Rgb | null = null;
  const flush = (end: number): void => {
    if (fill === null) return;
    const width = (end - start) * step + (end < steps ? OVERLAP : 0);
    out.push({ kind: 'rect', x: plot.x + start * step, y, width, height: style.stripHeight, fill });
  };
  for (let i = 0; i < steps; i++) {
    const here: Ink | Rgb = visibleColour(pxToX(plot.x + (i + 0.5) * step, xRange, plot)) ?? 'line';
    if (here === fill) continue;
    flush(i);
    [fill, start] = [here, i];
  }
  flush(steps);
  return out;
}

import type { MeasureText, Primitive, Rect } from './drawing.ts';
import { xToPx } from './axis-scale.ts';
import type { FigureLine, FigureModel, Ink } from './figure-model.ts';
import type { FigureStyle } from './figure-style.ts';
import type { LabelPlacement } from './place-labels.ts';
import { textPrimitives, textWidth } from './superscript-runs.ts';

export type LineLabel = { readonly index: number; readonly line: FigureLine; readonly nameWidth: number; readonly width: number; readonly importance: number };

/** What a line is worth where room is short: the diamond line, then what speaks for an origin, then the rest. */
const INK_IMPORTANCE: Partial<Record<Ink, number>> = { accent: 3, natural: 2, cvd: 2, hpht: 2, warn: 2, ink: 1, ink2: 1 };

/** The lines inside the axis, with the room their names need. */
export function labelsOf(model: FigureModel, measure: MeasureText, style: FigureStyle): LineLabel[] {
  const low = Math.min(...model.xRange);
  const high = Math.max(...model.xRange);
  return model.lines.flatMap((line, index) => {
    if (!(line.at >= low && line.at <= high)) return [];
    const nameWidth = textWidth(line.name, 'sans500', style.labelSize, measure);
    const positionWidth = textWidth(line.position, 'mono', style.tickSize, measure);
    const between = nameWidth > 0 && positionWidth > 0 ? style.namePositionGap : 0;
    return [{ index, line, nameWidth, width: nameWidth + between + positionWidth, importance: line.importance ?? INK_IMPORTANCE[line.ink] ?? 0 }];
  });
}

/** Lines that speak for nothing are drawn softer than the curve; their names stay in ink. */
const strokeInk = (ink: Ink): Ink => (ink === 'ink' ? 'ink3' : ink);

/** Each line from the axis to the frame, or on to its label, and the label: name, then position. */
export function drawLines(labels: readonly LineLabel[], placement: LabelPlacement, model: FigureModel, plot: Rect, measure: MeasureText, style: FigureStyle): Primitive[] {
  const placedAt = new Map(placement.placed.map((p) => [p.index, p]));
  return labels.flatMap(({ line, nameWidth }, i): Primitive[] => {
    const x = xToPx(line.at, model.xRange, plot);
    const place = placedAt.get(i);
    const baseline = plot.y - style.margin - 2 - (place?.row ?? 0) * style.rowHeight;
    const stroke: Primitive = {
      kind: 'line', x1: x, x2: x, y1: plot.y + plot.height, ink: strokeInk(line.ink), width: style.lineWidth,
      y2: place === undefined ? plot.y : baseline - style.labelSize * 0.7,
      ...(line.dash === true ? { dash: style.dash } : {}),
    };
    if (place === undefined) return [stroke];
    const positionLeft = nameWidth > 0 ? place.left + nameWidth + style.namePositionGap : place.left;
    return [
      stroke,
      ...textPrimitives(line.name, place.left, baseline, { font: 'sans500', size: style.labelSize, ink: line.ink, anchor: 'start' }, measure),
      ...textPrimitives(line.position, positionLeft, baseline, { font: 'mono', size: style.tickSize, ink: 'ink3', anchor: 'start' }, measure),
    ];
  });
}

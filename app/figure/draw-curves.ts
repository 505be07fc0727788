import type { Primitive, Rect } from './drawing.ts';
import { xToPx, yToPx } from './axis-scale.ts';
import { decimate } from './decimate.ts';
import type { FigureModel } from './figure-model.ts';
import type { FigureStyle } from './figure-style.ts';

/** Columns for each px: more than one keeps thin lines smooth on fine screens and on paper. */
const COLUMNS_PER_PX = 2;

const round = (v: number): number => Math.round(v * 100) / 100;

/** The curves as polylines, thinned to what the surface can show. */
export function drawCurves(model: FigureModel, plot: Rect, style: FigureStyle): Primitive[] {
  const columns = Math.max(1, Math.round(plot.width * COLUMNS_PER_PX));
  return model.curves.flatMap((curve) =>
    decimate(curve.x, curve.y, model.xRange[0], model.xRange[1], columns).map((piece): Primitive => ({
      kind: 'path',
      points: piece.x.flatMap((x, i) => [round(xToPx(x, model.xRange, plot)), round(yToPx(piece.y[i]!, model.yRange, plot))]),
      ink: curve.ink,
      width: style.curveWidth,
      ...(curve.dash ? { dash: style.dash } : {}),
      clip: plot,
    })),
  );
}

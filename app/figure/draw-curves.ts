import type { Primitive, Rect } from './drawing.ts';
import { xToPx, yToPx } from './axis-scale.ts';
import { decimate } from './decimate.ts';
import type { FigureModel } from './figure-model.ts';
import { dashOf, type FigureStyle } from './figure-style.ts';

/** Columns for each px: more than one keeps thin lines smooth on fine screens and on paper. */
const COLUMNS_PER_PX = 2;

/** Points as x0 y0 x1 y1 …, px to two decimals. */
function pointsOf(x: readonly number[], y: readonly number[], model: FigureModel, plot: Rect): number[] {
  const points = new Array<number>(2 * x.length);
  for (let i = 0; i < x.length; i++) {
    points[2 * i] = Math.round(xToPx(x[i]!, model.xRange, plot) * 100) / 100;
    points[2 * i + 1] = Math.round(yToPx(y[i]!, model.yRange, plot) * 100) / 100;
  }
  return points;
}

/** The curves as polylines, thinned to what the surface can show. */
export function drawCurves(model: FigureModel, plot: Rect, style: FigureStyle): Primitive[] {
  const columns = Math.max(1, Math.round(plot.width * COLUMNS_PER_PX));
  return model.curves.flatMap((curve) => {
    const dash = dashOf(curve, style);
    return decimate(curve.x, curve.y, model.xRange[0], model.xRange[1], columns).map((piece): Primitive => ({
      kind: 'path', points: pointsOf(piece.x, piece.y, model, plot), ink: curve.ink, width: style.curveWidth,
      ...(dash ? { dash } : {}), clip: plot,
    }));
  });
}

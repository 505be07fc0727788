import type { Anchor, MeasureText, Primitive, Rect } from './drawing.ts';
import { xToPx, yToPx } from './axis-scale.ts';
import type { FigureModel } from './figure-model.ts';
import type { FigureStyle } from './figure-style.ts';
import { formatNumber, powerOfTen } from './format-number.ts';
import { decimalsOf, niceTicks } from './nice-ticks.ts';
import { textPrimitives, textWidth } from './superscript-runs.ts';

/** Ordinate ticks with their printed numbers; a common power of ten goes into the caption. */
export type YScale = { readonly values: readonly number[]; readonly labels: readonly string[]; readonly caption: string };

/** Distance between ordinate ticks that reads well, px. */
const Y_TICK_ROOM = 52;

/** Powers of ten in steps of three, taken out where numbers would have five digits or more, or only zeros. */
function commonExponent(largest: number): number {
  if (!(largest > 0) || (largest >= 0.01 && largest < 10_000)) return 0;
  return Math.floor(Math.log10(largest) / 3) * 3;
}

export function yScale(model: FigureModel, height: number, style: FigureStyle): YScale {
  const [low, high] = model.yRange;
  const ticks = niceTicks(low, high, Math.max(1, Math.floor((height - 4 * style.rowHeight) / Y_TICK_ROOM)));
  const exponent = commonExponent(Math.max(Math.abs(low), Math.abs(high)));
  const divisor = 10 ** exponent;
  const decimals = decimalsOf(ticks.step / divisor);
  const caption = exponent === 0 ? model.yLabel : `${powerOfTen(exponent)} ${model.yLabel}`.trim();
  return { values: ticks.values, labels: ticks.values.map((v) => formatNumber(v / divisor, decimals)), caption };
}

/** Abscissa ticks as many as their numbers leave room for. */
function xTicks(model: FigureModel, plot: Rect, measure: MeasureText, style: FigureStyle): { at: number; label: string }[] {
  const [from, to] = model.xRange;
  for (let most = Math.max(1, Math.floor(plot.width / 55)); most >= 1; most--) {
    const ticks = niceTicks(from, to, most);
    const labels = ticks.values.map((v) => formatNumber(v, ticks.decimals));
    const room = Math.abs(xToPx(ticks.step, model.xRange, plot) - xToPx(0, model.xRange, plot));
    const widest = Math.max(0, ...labels.map((label) => measure(label, 'mono', style.tickSize)));
    if (widest * 1.5 <= room || most === 1) return ticks.values.map((at, i) => ({ at, label: labels[i]! }));
  }
  return [];
}

export function drawGrid(model: FigureModel, scale: YScale, plot: Rect, measure: MeasureText, style: FigureStyle): Primitive[] {
  const right = plot.x + plot.width;
  const bottom = plot.y + plot.height;
  const stroke = { kind: 'line', ink: 'line2', width: style.hairline } as const;
  return [
    ...scale.values.map((v): Primitive => ({ ...stroke, x1: plot.x, x2: right, y1: yToPx(v, model.yRange, plot), y2: yToPx(v, model.yRange, plot) })),
    ...xTicks(model, plot, measure, style).map(({ at }): Primitive => ({ ...stroke, x1: xToPx(at, model.xRange, plot), x2: xToPx(at, model.xRange, plot), y1: plot.y, y2: bottom })),
    { ...stroke, x1: plot.x, x2: plot.x, y1: plot.y, y2: bottom },
    { ...stroke, x1: right, x2: right, y1: plot.y, y2: bottom },
    { ...stroke, x1: plot.x, x2: right, y1: plot.y, y2: plot.y },
  ];
}

/** Where the ordinate's caption stands (row 0 is just above the frame), and what lies between the frame and the numbers below it, px. */
export type AxisRoom = { readonly caption: { readonly x: number; readonly row: number; readonly anchor: Anchor }; readonly below: number };

/** The axis line, the numbers and the captions: over the curves, so that they are never hidden. */
export function drawAxes(model: FigureModel, scale: YScale, plot: Rect, room: AxisRoom, measure: MeasureText, style: FigureStyle): Primitive[] {
  const bottom = plot.y + plot.height;
  const number = { font: 'mono', size: style.tickSize, ink: 'ink3' } as const;
  const caption = { font: 'sans', size: style.captionSize, ink: 'ink3' } as const;
  const numbersY = bottom + room.below + style.tickGap + style.tickSize * 0.8;
  const out: Primitive[] = [{ kind: 'line', x1: plot.x, x2: plot.x + plot.width, y1: bottom, y2: bottom, ink: 'ink3', width: style.hairline }];
  // A number at the very top hangs from the frame: centred on it, it would touch the caption above.
  const highest = plot.y + style.tickSize * 0.75;
  scale.values.forEach((v, i) => {
    out.push({ kind: 'text', x: plot.x - style.tickGap, y: Math.max(yToPx(v, model.yRange, plot) + style.tickSize * 0.35, highest), text: scale.labels[i]!, anchor: 'end', ...number });
  });
  for (const { at, label } of xTicks(model, plot, measure, style)) {
    out.push({ kind: 'text', x: xToPx(at, model.xRange, plot), y: numbersY, text: label, anchor: 'middle', ...number });
  }
  if (scale.caption !== '') {
    const { x, row, anchor } = room.caption;
    out.push(...textPrimitives(scale.caption, x, plot.y - style.margin - 2 - row * style.rowHeight, { ...caption, anchor }, measure));
  }
  if (textWidth(model.xLabel, 'sans', style.captionSize, measure) <= plot.width) {
    out.push(...textPrimitives(model.xLabel, plot.x + plot.width, numbersY + style.rowHeight, { ...caption, anchor: 'end' }, measure));
  }
  return out;
}

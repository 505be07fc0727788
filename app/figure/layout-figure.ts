import type { Drawing, MeasureText, Primitive, Rect } from './drawing.ts';
import { drawAxes, drawGrid, yScale } from './draw-axes.ts';
import { drawCurves } from './draw-curves.ts';
import { drawLegend, legendPlaces, legendRows, type LegendPlace } from './draw-legend.ts';
import { drawLines, labelsOf } from './draw-lines.ts';
import { drawVisibleStrip } from './draw-visible-strip.ts';
import type { FigureModel } from './figure-model.ts';
import { formatNumber } from './format-number.ts';
import { FIGURE_STYLE } from './figure-style.ts';
import type { FigureStyle } from './figure-style.ts';
import { xToPx } from './axis-scale.ts';
import { placeLabels } from './place-labels.ts';
import type { LabelPlacement } from './place-labels.ts';
import { textWidth } from './superscript-runs.ts';

export type FigureSurface = {
  readonly width: number;
  readonly height: number;
  readonly measureText: MeasureText;
  /** Departures from the house's measures, for instance smaller type on paper. */
  readonly style?: Partial<FigureStyle>;
};

export type FigureLayout = {
  readonly drawing: Drawing;
  /** The frame's inside: with axis-scale.ts a px becomes a position and back. */
  readonly plot: Rect;
  /** Indices of model.lines whose label found no room; the drawing says how many. */
  readonly unlabelled: readonly number[];
  /** Where the curves' names stand; none for a single curve. */
  readonly legend: readonly LegendPlace[];
};

/**
 * Lays a figure out for one surface: what comes back is drawn in order, without another decision.
 * The same model, size and measures give the same drawing. Too small a surface loses labels, ticks and legend, in that order.
 */
export function layoutFigure(model: FigureModel, surface: FigureSurface): FigureLayout {
  const style: FigureStyle = { ...FIGURE_STYLE, ...surface.style };
  const measure = surface.measureText;
  const { width, height } = surface;

  const scale = yScale(model, height, style);
  const captionWidth = textWidth(scale.caption, 'sans', style.captionSize, measure);
  const numbersWidth = Math.max(0, ...scale.labels.map((label) => measure(label, 'mono', style.tickSize)));
  const captionInMargin = captionWidth <= Math.max(numbersWidth, style.captionShare * width);
  const left = Math.ceil(Math.max(numbersWidth, captionInMargin ? captionWidth : 0) + style.tickGap + style.margin);
  const right = Math.ceil(style.margin + Math.max(...model.xRange.map((end) => measure(formatNumber(end, 0), 'mono', style.tickSize))) / 2);
  const legend = legendRows(model, { width: width - left - right, rows: Math.max(1, Math.min(style.legendRows, Math.floor((height * style.legendShare) / style.rowHeight))) }, measure, style);
  const strip = model.visibleStrip ? style.stripHeight + style.stripGap : 0;
  const bottom = strip + style.tickGap + style.tickSize + style.rowHeight * Math.max(1, legend.length) + style.margin;

  // A caption wider than the margin gets the row above all labels, so that it never stands in a line's way.
  const blocked = captionInMargin && captionWidth > 0 ? [{ row: 0, left: left - style.tickGap - captionWidth, right: left - style.tickGap }] : [];
  const plotWidth = Math.max(1, width - left - right);
  const labels = labelsOf(model, measure, style);
  const placement: LabelPlacement = placeLabels(
    labels.map((label) => ({ x: xToPx(label.line.at, model.xRange, { x: left, y: 0, width: plotWidth, height: 1 }), width: label.width, importance: label.importance })),
    {
      left: style.margin, right: width - style.margin, gap: style.labelGap, offset: style.lineOffset, clearance: style.lineClearance, blocked,
      rows: Math.max(1, Math.min(style.maxLabelRows, Math.floor((height * style.labelShare) / style.rowHeight))),
    },
  );
  const rows = placement.rowsUsed + (captionWidth > 0 && !captionInMargin ? 1 : 0);
  const top = Math.max(rows, captionWidth > 0 ? 1 : 0) * style.rowHeight + style.margin * 2;
  const plot: Rect = { x: left, y: top, width: plotWidth, height: Math.max(1, height - top - bottom) };

  const legendTop = plot.y + plot.height + strip + style.tickGap + style.tickSize;
  const primitives: Primitive[] = [
    ...drawGrid(model, scale, plot, measure, style),
    ...(model.visibleStrip ? drawVisibleStrip(model.xRange, plot, style) : []),
    ...drawLines(labels, placement, model, plot, measure, style),
    ...drawCurves(model, plot, style),
    ...drawAxes(model, scale, plot, { caption: captionInMargin ? { x: left - style.tickGap, row: 0, anchor: 'end' } : { x: style.margin, row: rows - 1, anchor: 'start' }, below: strip }, measure, style),
    ...drawLegend(model, legend, placement.dropped.length, plot, legendTop, measure, style),
  ];
  return { drawing: { width, height, primitives }, plot, unlabelled: placement.dropped.map((i) => labels[i]!.index), legend: legendPlaces(legend, plot, legendTop, measure, style) };
}

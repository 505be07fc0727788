import type { MeasureText, Primitive, Rect } from './drawing.ts';
import type { FigureModel } from './figure-model.ts';
import { dashOf, type FigureStyle } from './figure-style.ts';
import { textPrimitives, textWidth } from './superscript-runs.ts';

type Entry = { readonly curve: number; readonly text: string; readonly left: number };
export type LegendRows = readonly (readonly Entry[])[];

/** Cuts a text to a width and ends it in an ellipsis. */
export function shorten(text: string, width: number, measure: (text: string) => number): string {
  if (measure(text) <= width) return text;
  const characters = [...text];
  while (characters.length > 1 && measure(`${characters.join('')}…`) > width) characters.pop();
  return `${characters.join('').trimEnd()}…`;
}

/** Where each curve's name stands below the axis; none for a single curve. Offsets from the plot's left edge, px. */
export function legendRows(model: FigureModel, room: { readonly width: number; readonly rows: number }, measure: MeasureText, style: FigureStyle): LegendRows {
  const named = model.curves.flatMap((curve, index) => (curve.label === '' ? [] : [index]));
  if (named.length < 2) return [];
  const size = (text: string): number => textWidth(text, 'sans', style.captionSize, measure);
  const rows: Entry[][] = [[]];
  const moreWidth = size(`+${named.length} curves`) + style.legendGap;
  // The first row shares its line with the abscissa's caption; the last keeps room to say what is left out.
  const roomOf = (row: number): number => room.width - (row === 0 ? size(model.xLabel) + style.legendGap : 0) - (row === room.rows - 1 ? moreWidth : 0);
  let left = 0;
  for (const [done, curve] of named.entries()) {
    const text = shorten(model.curves[curve]!.label, room.width * 0.4, size);
    const width = style.legendStroke + style.namePositionGap + size(text);
    while (left + width > roomOf(rows.length - 1) && rows.length < room.rows) {
      rows.push([]);
      left = 0;
    }
    if (left + width > roomOf(rows.length - 1)) {
      const text = `+${named.length - done} curves`;
      if (left + size(text) <= roomOf(rows.length - 1) + moreWidth) rows.at(-1)!.push({ curve: -1, text, left });
      break;
    }
    rows.at(-1)!.push({ curve, text, left });
    left += width + style.legendGap;
  }
  return rows;
}

/** Where a curve's name stands in the drawing, with its stroke. */
export type LegendPlace = Rect & { readonly curve: number };

/** The places of all names that found room, so that a surface can answer to them. */
export const legendPlaces = (rows: LegendRows, plot: Rect, top: number, measure: MeasureText, style: FigureStyle): LegendPlace[] =>
  rows.flatMap((row, r) => row.filter((entry) => entry.curve >= 0).map((entry) => ({
    curve: entry.curve, x: plot.x + entry.left, y: top + r * style.rowHeight,
    width: style.legendStroke + style.namePositionGap + textWidth(entry.text, 'sans', style.captionSize, measure), height: style.rowHeight,
  })));

/** The curves' names with a piece of their stroke, and how many lines found no room for a label. */
export function drawLegend(model: FigureModel, rows: LegendRows, unlabelled: number, plot: Rect, top: number, measure: MeasureText, style: FigureStyle): Primitive[] {
  const out: Primitive[] = [];
  const font = { font: 'sans', size: style.captionSize, anchor: 'start' } as const;
  const baseline = (row: number): number => top + (row + 1) * style.rowHeight - style.captionSize * 0.2;
  rows.forEach((row, r) => {
    for (const entry of row) {
      const curve = model.curves[entry.curve];
      const x = plot.x + entry.left;
      if (curve === undefined) {
        out.push({ kind: 'text', x, y: baseline(r), text: entry.text, ink: 'ink3', ...font });
        continue;
      }
      const y = baseline(r) - style.captionSize * 0.32;
      const dash = dashOf(curve, style);
      out.push({ kind: 'line', x1: x, x2: x + style.legendStroke, y1: y, y2: y, ink: curve.ink, width: style.curveWidth, ...(dash ? { dash } : {}) });
      out.push(...textPrimitives(entry.text, x + style.legendStroke + style.namePositionGap, baseline(r), { ink: 'ink2', ...font }, measure));
    }
  });
  if (unlabelled > 0) {
    const size = (text: string): number => textWidth(text, 'sans', style.captionSize, measure);
    const last = rows.at(-1)?.at(-1);
    const left = last === undefined ? 0 : last.left + (last.curve < 0 ? 0 : style.legendStroke + style.namePositionGap) + size(last.text) + style.legendGap;
    const room = plot.width - left - (rows.length > 1 ? 0 : size(model.xLabel) + style.legendGap);
    const text = [`+${unlabelled} more ${unlabelled === 1 ? 'line' : 'lines'}`, `+${unlabelled} lines`, `+${unlabelled}`].find((candidate) => size(candidate) <= room);
    if (text !== undefined) out.push({ kind: 'text', x: plot.x + left, y: baseline(Math.max(0, rows.length - 1)), text, ink: 'ink3', ...font });
  }
  return out;
}

/** Measures of a figure, px (points on paper), from the house's look; one place for all surfaces. */
export const FIGURE_STYLE = {
  tickSize: 11,
  captionSize: 11,
  labelSize: 11.5,
  curveWidth: 1.3,
  lineWidth: 1,
  hairline: 1,
  stripHeight: 5,
  stripGap: 2,
  /** Width of one coloured step of the visible strip. */
  stripStep: 2,
  rowHeight: 15,
  /** Share of the height that rows of labels may take. */
  labelShare: 0.28,
  maxLabelRows: 8,
  /** The left margin may grow to this share of the width for the ordinate's caption. */
  captionShare: 0.12,
  margin: 4,
  tickGap: 7,
  labelGap: 9,
  lineOffset: 4,
  lineClearance: 2.5,
  namePositionGap: 5,
  dash: [4, 3],
  legendStroke: 16,
  legendGap: 14,
  legendRows: 3,
  /** Share of the height that the legend may take, one row at least. */
  legendShare: 0.15,
} as const;
export type FigureStyle = { readonly [K in keyof typeof FIGURE_STYLE]: (typeof FIGURE_STYLE)[K] extends number ? number : readonly [number, number] };

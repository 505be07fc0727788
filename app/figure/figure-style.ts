/** Measures of a figure, px (points on paper), from the house's look; one place for all surfaces. */
export const FIGURE_STYLE = {
  tickSize: 11,
  captionSize: 11,
  labelSize: 11.5,
  curveWidth: 1.3,
  /** Width of the curve that is pointed at, where there are several. */
  pointedWidth: 3,
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
  /** Broken strokes that tell curves apart; the first is the plain dash. On and off lengths in turn. */
  patterns: [[4, 3], [1.3, 2.4], [9, 3], [9, 2.5, 1.3, 2.5], [4, 2.5, 1.3, 2.5], [9, 2.5, 1.3, 2.5, 1.3, 2.5]],
  /** Long enough for one whole turn of every pattern. */
  legendStroke: 22,
  legendGap: 14,
  legendRows: 3,
  /** Share of the height that the legend may take, one row at least. */
  legendShare: 0.15,
} as const;
export type FigureStyle = { readonly [K in keyof typeof FIGURE_STYLE]: (typeof FIGURE_STYLE)[K] extends number ? number : (typeof FIGURE_STYLE)[K] extends readonly (readonly number[])[] ? readonly (readonly number[])[] : readonly number[] };

/** On and off lengths of a curve's stroke; undefined where it is whole. */
export const dashOf = (curve: { readonly dash: boolean; readonly pattern?: number | undefined }, style: Pick<FigureStyle, 'dash' | 'patterns'>): readonly number[] | undefined =>
  (curve.dash ? style.patterns[curve.pattern ?? 0] ?? style.dash : undefined);

/** Points that all curves together may bring to one drawing; above, a pull or a turn of the wheel would stutter. */
const MOST_POINTS = 14_000;
const FEWEST_COLUMNS = 240;

/** Columns that each of several curves is thinned to (two points a column), at most one a px of the width. */
export const columnsFor = (width: number, curves: number): number => Math.min(width, Math.max(FEWEST_COLUMNS, Math.floor(MOST_POINTS / (2 * Math.max(1, curves)))));

import type { SourceStone } from './report-source.ts';

/** The figure that a report on several stones shows on its first page: the first of a stone that is not plainly natural, else the first there is. */
export function leadingFigure(stones: readonly SourceStone[]): { stone: number; figure: number } | null {
  const withFigure = stones.map((entry, stone) => ({ stone, figures: entry.figures.length, natural: entry.conclusions.at(-1)?.conclusion === 'natural' })).filter((entry) => entry.figures > 0);
  const chosen = withFigure.find((entry) => !entry.natural) ?? withFigure[0];
  return chosen === undefined ? null : { stone: chosen.stone, figure: 0 };
}

/**
 * Weight of a polished diamond from its outer measures: factor × spread × depth, in ct and mm. The factors of round, oval, heart, triangle, baguette, emerald,
 * marquise and pear are in common print for appraisers and were compared with public tutorials, which name no primary source; princess, cushion and radiant are from memory.
 * Factors hold for diamond; for another material the weight goes with its specific gravity.
 */
export const CUTS = ['round', 'oval', 'pear', 'marquise', 'heart', 'triangle', 'emerald', 'baguette', 'princess', 'cushion', 'radiant'] as const;
export type Cut = (typeof CUTS)[number];

export const CUT_WORDS: Readonly<Record<Cut, string>> = {
  round: 'round brilliant', oval: 'oval', pear: 'pear', marquise: 'marquise', heart: 'heart', triangle: 'triangle', emerald: 'emerald cut', baguette: 'baguette',
  princess: 'princess', cushion: 'cushion', radiant: 'radiant',
};

type Formula = {
  /** Factor by the ratio of length to width, straight lines between; one entry where it does not depend on it. */
  readonly factors: readonly (readonly [ratio: number, factor: number])[];
  /** 'mean': the mean of length and width squared; 'product': length times width. */
  readonly spread: 'mean' | 'product';
  /** Relative standard uncertainty of the factor itself: judgement, from how far stones of one cut differ. */
  readonly uncertainty: number;
  readonly source: 'compared' | 'from memory';
};

const one = (factor: number): Formula['factors'] => [[1, factor]];

export const FORMULAS: Readonly<Record<Cut, Formula>> = {
  round: { factors: one(0.0061), spread: 'mean', uncertainty: 0.02, source: 'compared' },
  oval: { factors: one(0.0062), spread: 'mean', uncertainty: 0.04, source: 'compared' },
  heart: { factors: one(0.0059), spread: 'product', uncertainty: 0.05, source: 'compared' },
  triangle: { factors: one(0.0057), spread: 'product', uncertainty: 0.05, source: 'compared' },
  baguette: { factors: one(0.00915), spread: 'product', uncertainty: 0.06, source: 'compared' },
  emerald: { factors: [[1, 0.008], [1.5, 0.0092], [2, 0.01], [2.5, 0.0106]], spread: 'product', uncertainty: 0.06, source: 'compared' },
  marquise: { factors: [[1.5, 0.00565], [1.75, 0.0057], [2, 0.0058], [2.25, 0.00583], [2.5, 0.00585], [2.75, 0.0059], [3, 0.00595]], spread: 'product', uncertainty: 0.05, source: 'compared' },
  pear: { factors: [[1.25, 0.00615], [1.5, 0.006], [2, 0.00575]], spread: 'product', uncertainty: 0.05, source: 'compared' },
  princess: { factors: one(0.0083), spread: 'product', uncertainty: 0.05, source: 'from memory' },
  cushion: { factors: one(0.00815), spread: 'product', uncertainty: 0.06, source: 'from memory' },
  radiant: { factors: one(0.0081), spread: 'product', uncertainty: 0.06, source: 'from memory' },
};

/** Factor of a cut at a ratio of length to width, 1 or more; outside the printed ratios the nearest one holds. */
export function factorAt(cut: Cut, ratio: number): number {
  const { factors } = FORMULAS[cut];
  const above = factors.findIndex(([at]) => at >= ratio);
  if (above === 0) return factors[0]![1];
  if (above === -1) return factors.at(-1)![1];
  const [lowRatio, low] = factors[above - 1]!;
  const [highRatio, high] = factors[above]!;
  return low + ((high - low) * (ratio - lowRatio)) / (highRatio - lowRatio);
}

/** How much a thick girdle adds: seen in printed worked examples; 'very thick' is from memory. */
export const GIRDLES = ['thin-to-medium', 'medium-plus', 'slightly-thick', 'thick', 'very-thick', 'extremely-thick'] as const;
export type Girdle = (typeof GIRDLES)[number];
export const GIRDLE_WORDS: Readonly<Record<Girdle, string>> = {
  'thin-to-medium': 'thin to medium', 'medium-plus': 'medium, a little more', 'slightly-thick': 'slightly thick', thick: 'thick', 'very-thick': 'very thick', 'extremely-thick': 'extremely thick',
};
export const GIRDLE_FACTOR: Readonly<Record<Girdle, number>> = {
  'thin-to-medium': 1, 'medium-plus': 1.015, 'slightly-thick': 1.02, thick: 1.03, 'very-thick': 1.06, 'extremely-thick': 1.08,
};

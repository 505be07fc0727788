import { CONCLUSION_WORDS, conclusionId, type ConclusionId } from '../domain/conclusion.ts';

/** What testing one stone of a lot came to. The words are those of a conclusion; a lot has none outside the scope: such a stone is referred. */
export const lotOutcome = conclusionId.exclude(['out-of-scope']);
export type LotOutcome = Exclude<ConclusionId, 'out-of-scope'>;
export const LOT_OUTCOMES = lotOutcome.options;

/** One key each in the grid. */
export const OUTCOME_KEYS: Readonly<Record<LotOutcome, string>> = {
  natural: 'N', 'grown-cvd': 'C', 'grown-hpht': 'H', 'grown-undetermined-method': 'G', 'not-diamond': 'X', undetermined: 'U',
};

/** Short words for the grid and its totals. */
export const OUTCOME_SHORT: Readonly<Record<LotOutcome, string>> = {
  natural: 'natural, consistent', 'grown-cvd': 'laboratory-grown, CVD', 'grown-hpht': 'laboratory-grown, HPHT',
  'grown-undetermined-method': 'laboratory-grown, method open', 'not-diamond': 'not diamond', undetermined: 'undetermined, referred',
};

export const isGrown = (outcome: LotOutcome): boolean => outcome.startsWith('grown-');

/** A conclusion of a stone's folder as it counts in its lot. */
export const outcomeOfConclusion = (conclusion: ConclusionId): LotOutcome => (conclusion === 'out-of-scope' ? 'undetermined' : conclusion);

/** Words by which an imported list may say an outcome, folded to lower case. */
const SAID: Readonly<Record<LotOutcome, readonly string[]>> = {
  natural: ['n', 'nat', 'natural', 'natural diamond', 'pass', 'passed', 'passing', 'natural, consistent'],
  'grown-cvd': ['c', 'cvd', 'laboratory-grown cvd', 'lab-grown cvd', 'laboratory-grown, cvd'],
  'grown-hpht': ['h', 'hpht', 'laboratory-grown hpht', 'lab-grown hpht', 'laboratory-grown, hpht'],
  'grown-undetermined-method': ['g', 'grown', 'laboratory-grown', 'laboratory grown', 'lab-grown', 'lab grown', 'synthetic', 'laboratory-grown, method open'],
  'not-diamond': ['x', 'not diamond', 'simulant', 'imitation', 'moissanite', 'cubic zirconia'],
  undetermined: ['u', 'undetermined', 'refer', 'referred', 'further testing', 'undetermined, referred', 'retest'],
};

/** The outcome that a word in a list means, or undefined where the house does not know the word. */
export function outcomeOfWord(word: string): LotOutcome | undefined {
  const folded = word.trim().toLowerCase().replaceAll(/\s+/g, ' ');
  return LOT_OUTCOMES.find((outcome) => SAID[outcome].includes(folded) || CONCLUSION_WORDS[outcome] === folded);
}

import { z } from 'zod';

export const CONCLUSION_IDS = [
  'natural', 'grown-cvd', 'grown-hpht', 'grown-undetermined-method', 'not-diamond', 'undetermined', 'out-of-scope',
] as const;
export const conclusionId = z.enum(CONCLUSION_IDS);
export type ConclusionId = z.infer<typeof conclusionId>;

/** The words that leave the house. Screening states characteristics, never certainty. */
export const CONCLUSION_WORDS: Readonly<Record<ConclusionId, string>> = {
  natural: 'natural diamond – characteristics consistent',
  'grown-cvd': 'laboratory-grown diamond – CVD growth characteristics',
  'grown-hpht': 'laboratory-grown diamond – HPHT growth characteristics',
  'grown-undetermined-method': 'laboratory-grown diamond – growth method not determined',
  'not-diamond': 'not diamond',
  undetermined: 'undetermined – further testing required',
  'out-of-scope': 'outside the scope of this screening',
};

/** For the heads of narrow columns; the whole words stand beside. */
export const CONCLUSION_SHORT: Readonly<Record<ConclusionId, string>> = {
  natural: 'natural', 'grown-cvd': 'CVD', 'grown-hpht': 'HPHT', 'grown-undetermined-method': 'grown, method open', 'not-diamond': 'not diamond', undetermined: 'undetermined', 'out-of-scope': 'out of scope',
};

import { z } from 'zod';

/** What a colourless stone can be. Every grade of the evidence table stands under one of these. */
export const HYPOTHESIS_IDS = ['natural-untreated', 'natural-treated', 'cvd-as-grown', 'cvd-treated', 'hpht-grown', 'not-diamond'] as const;
export const hypothesisId = z.enum(HYPOTHESIS_IDS);
export type HypothesisId = z.infer<typeof hypothesisId>;

/** As they stand inside a sentence. */
export const HYPOTHESIS_WORDS: Readonly<Record<HypothesisId, string>> = {
  'natural-untreated': 'natural, untreated', 'natural-treated': 'natural, treated', 'cvd-as-grown': 'CVD-grown, not treated',
  'cvd-treated': 'CVD-grown and treated', 'hpht-grown': 'HPHT-grown', 'not-diamond': 'not diamond',
};

/**
 * What an observation says of one hypothesis: 3 very strongly for it, 2 strongly, 1 supports, 0 nothing, −1 to −3 against it alike;
 * 'excludes' where the two cannot be true together, if the observation itself is proven.
 */
export type Grade = -3 | -2 | -1 | 0 | 1 | 2 | 3 | 'excludes';
export type Grades = Readonly<Record<HypothesisId, Grade>>;

export const NO_GRADES: Grades = { 'natural-untreated': 0, 'natural-treated': 0, 'cvd-as-grown': 0, 'cvd-treated': 0, 'hpht-grown': 0, 'not-diamond': 0 };

const WORDS: Readonly<Record<string, Grade>> = { '+++': 3, '++': 2, '+': 1, 0: 0, '-': -1, '--': -2, '---': -3, X: 'excludes' };

/** Six grades in the order of HYPOTHESIS_IDS, written as in a table: '++ + -- -- - X'. A word that is none is a fault of the table. */
export function grades(text: string): Grades {
  const words = text.trim().split(/\s+/);
  if (words.length !== HYPOTHESIS_IDS.length) throw new Error(`grades "${text}": ${words.length} of ${HYPOTHESIS_IDS.length}`);
  return Object.fromEntries(HYPOTHESIS_IDS.map((id, i) => {
    const grade = WORDS[words[i]!];
    if (grade === undefined) throw new Error(`grades "${text}": "${words[i]!}"`);
    return [id, grade];
  })) as Grades;
}

export const isAgainst = (grade: Grade): boolean => grade === 'excludes' || grade < 0;
export const isFor = (grade: Grade): boolean => grade !== 'excludes' && grade > 0;

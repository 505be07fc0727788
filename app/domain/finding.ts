import { z } from 'zod';
import { methodId } from './method.ts';

export const STRENGTHS = ['diagnostic', 'strong', 'supporting', 'neutral'] as const;
export const strength = z.enum(STRENGTHS);
export type Strength = z.infer<typeof strength>;

/** What a finding speaks for. 'diamond' and 'not-diamond' answer identity; the rest answer origin or treatment; 'none' has no weight alone. */
export const SUPPORTS = ['diamond', 'not-diamond', 'natural', 'grown', 'grown-cvd', 'grown-hpht', 'treatment', 'none'] as const;
export const supports = z.enum(SUPPORTS);
export type Supports = z.infer<typeof supports>;

/** One fact from one method. */
export const findingFact = z.object({
  /** Stable word for the fact, for instance 'centre:SIV', 'diamond-line:present', 'glow:short-over-long'. */
  code: z.string().min(1).max(80),
  /** One sentence with the number in it, as it stands in the margin and on the report. */
  statement: z.string().min(1).max(600),
  strength,
  supports,
  method: methodId,
  /** What this finding can't say: the counter-example, in a short clause. */
  caution: z.string().max(400).optional(),
  /** Where its meaning comes from. */
  source: z.string().max(300).optional(),
});
export type FindingFact = z.infer<typeof findingFact>;

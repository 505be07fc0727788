import { z } from 'zod';
import { conclusionId } from '../domain/conclusion.ts';
import { methodId } from '../domain/method.ts';

/** Version of the rules of judgement; a conclusion stores the one it was made with. */
export const RULES_VERSION = 'rules 2026.1';

/** What the findings of one stone amount to, said openly. */
export const proposal = z.object({
  rules: z.string(),
  conclusion: conclusionId,
  /** Sentences an appraiser can print: finding, rule, weight. */
  reasons: z.array(z.string()),
  /** What speaks against it. */
  against: z.array(z.string()),
  /** What was not done or does not count, and why. */
  missing: z.array(z.string()),
  nextTests: z.array(z.object({ method: methodId, why: z.string() })),
  /** Ids of the findings that counted. */
  counted: z.array(z.string()),
});
export type Proposal = z.infer<typeof proposal>;

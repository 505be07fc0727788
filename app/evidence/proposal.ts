import { z } from 'zod';
import { colourClass } from '../domain/colour-class.ts';
import { conclusionId } from '../domain/conclusion.ts';
import { findingFact, strength, supports } from '../domain/finding.ts';
import { methodId } from '../domain/method.ts';
import { hypothesisId } from './hypothesis.ts';
import { ruleId } from './rules/rule-book.ts';

/** Version of the rules of judgement; a conclusion stores the one it was made with. */
export const RULES_VERSION = 'rules 2026.3';

const grade = z.union([z.literal('excludes'), z.number().int().min(-3).max(3)]);

/** What one finding did: finding → rule → weight. */
export const chainLink = z.object({
  finding: z.string(), code: z.string(), method: methodId, run: z.string().nullable(),
  /** Row of the evidence table; empty for a person's own words and for codes the table does not know. */
  row: z.string(),
  strength, supports,
  /** What it says of each hypothesis, with the weight it was recorded with. */
  grades: z.record(hypothesisId, grade),
  /** decides: the rule was met by it · adds: speaks the same way · weighs: has weight, and the stone stays open · against · noted: counted, without effect · ignored */
  role: z.enum(['decides', 'adds', 'weighs', 'against', 'noted', 'ignored']),
  rule: ruleId,
  /** The same in words an appraiser can print. */
  sentence: z.string(),
});
export type ChainLink = z.infer<typeof chainLink>;

export const hypothesisStanding = z.object({
  id: hypothesisId, standing: z.enum(['leading', 'open', 'unlikely', 'excluded']), for: z.array(z.string()), against: z.array(z.string()),
});

const weighedFinding = findingFact.extend({
  id: z.string(), counts: z.boolean(), barred: z.boolean().optional(), state: z.enum(['proposed', 'accepted', 'set-aside', 'replaced']), run: z.string().nullable(),
});

/** All that a proposal was made from, so that it can be made again. */
export const proposalBasis = z.object({
  stone: z.object({ mounted: z.boolean(), setting: z.enum(['open-back', 'closed-back']).nullable(), colourClass, weightCt: z.number().nullable().optional() }),
  findings: z.array(weighedFinding),
  methodsDone: z.array(methodId),
  methodsAvailable: z.array(methodId),
  protocol: z.object({ name: z.string(), asks: z.array(methodId) }).optional(),
  disputed: z.boolean().optional(),
});
export type ProposalBasis = z.infer<typeof proposalBasis>;

/** What the findings of one stone amount to, said openly. Optional parts are missing in proposals that older rules made. */
export const proposal = z.object({
  rules: z.string(),
  /** Version of the evidence table. */
  table: z.string().optional(),
  conclusion: conclusionId,
  /** The rule that had the last word. */
  rule: ruleId.optional(),
  /** Sentences an appraiser can print: finding, rule, weight. */
  reasons: z.array(z.string()),
  /** What speaks against it. */
  against: z.array(z.string()),
  /** What was not done or does not count, and why. */
  missing: z.array(z.string()),
  nextTests: z.array(z.object({
    method: methodId, why: z.string(),
    /** What the test needs so that it can be relied on. */
    caution: z.string().optional(),
    /** Chance that the rules settle the stone after it, and expected loss of doubt in bits; they order the list. */
    settles: z.number().optional(), bits: z.number().optional(),
  })),
  /** Ids of the findings that counted. */
  counted: z.array(z.string()),
  chain: z.array(chainLink).optional(),
  hypotheses: z.array(hypothesisStanding).optional(),
  basis: proposalBasis.optional(),
});
export type Proposal = z.infer<typeof proposal>;

import { measuredStone, sampledStone } from './evaluate.ts';
import type { Verdict } from './evaluate.ts';

/** Part `part` of `of`: every of-th stone, so that parts take equally long. */
export type EvaluationPart = { readonly seed: number; readonly sampled: number; readonly measured: number; readonly part: number; readonly of: number };
export type Numbered = { readonly index: number; readonly verdict: Verdict };
export type PartResult = { readonly sampled: readonly Numbered[]; readonly measured: readonly Numbered[] };

export const EVALUATION_DEFAULTS = { seed: 1, stones: 20_000, measured: 1_080 } as const;

const STRIDE = 1_000_003;
const seedOf = (seed: number, index: number, of: 0 | 1): number => (Math.imul(2 * seed + of, STRIDE) + index) | 0;

function every(count: number, { part, of }: EvaluationPart, make: (index: number) => Verdict): Numbered[] {
  const out: Numbered[] = [];
  for (let index = part; index < count; index += of) out.push({ index, verdict: make(index) });
  return out;
}

/** The stones of one part. The same seed gives the same stones, however many parts there are. */
export const runPart = (plan: EvaluationPart): PartResult => ({
  sampled: every(plan.sampled, plan, (index) => sampledStone(seedOf(plan.seed, index, 0))),
  measured: every(plan.measured, plan, (index) => measuredStone(index, seedOf(plan.seed, index, 1))),
});

/** The verdicts of all parts in the order of their numbers. */
export const inOrder = (parts: readonly (readonly Numbered[])[]): Verdict[] => parts.flat().sort((a, b) => a.index - b.index).map((one) => one.verdict);

import { lotBounds, type LotBounds } from './lot-bounds.ts';
import { drawSample } from './draw-sample.ts';
import type { LotResult } from './fold-results.ts';
import { isGrown, LOT_OUTCOMES, type LotOutcome } from './lot-outcome.ts';
import type { PlanContent } from './lot-record.ts';

export type OutcomeCounts = Readonly<Record<LotOutcome, number>>;

export type LotFigures = {
  readonly lot: number; readonly tested: number; readonly untested: number;
  readonly counts: OutcomeCounts;
  readonly grown: number; readonly undetermined: number; readonly notDiamond: number;
  /** What the tested stones alone make certain, whatever the rest is. */
  readonly certain: LotBounds;
  /** Tested stones that count as the random sample, and what was found in it; null where there is none. */
  readonly sample: { readonly size: number; readonly planned: number; readonly grown: number; readonly undetermined: number; readonly outside: number } | null;
  /** Limits of the number of laboratory-grown stones in the lot, undetermined ones once taken as natural and once as laboratory-grown; null without a random sample. */
  readonly bounds: { readonly asNatural: LotBounds; readonly asGrown: LotBounds } | null;
};

export function countOutcomes(results: readonly Pick<LotResult, 'outcome'>[]): OutcomeCounts {
  const counts = Object.fromEntries(LOT_OUTCOMES.map((outcome) => [outcome, 0])) as Record<LotOutcome, number>;
  for (const { outcome } of results) counts[outcome] += 1;
  return counts;
}

const grownOf = (results: readonly LotResult[]): number => results.filter((result) => isGrown(result.outcome)).length;
const openOf = (results: readonly LotResult[]): number => results.filter((result) => result.outcome === 'undetermined').length;

/** The tested stones that stand for a random sample: those of the drawn list, or all where the stones were mixed and taken unseen. */
function sampleOf(results: readonly LotResult[], plan: PlanContent, lot: number): readonly LotResult[] | null {
  if (plan.drawn === 'chosen' || plan.drawn === 'unknown' || plan.lot !== lot) return null;
  if (plan.size >= plan.lot) return results.length >= plan.lot ? results : null;
  if (plan.drawn === 'mixed' || plan.seed === null) return results;
  const drawn = new Set(drawSample(plan.lot, plan.size, plan.seed));
  return results.filter((result) => drawn.has(result.number));
}

/** What is certain and what is only likely can’t contradict each other. */
const within = (bounds: LotBounds, low: number, high: number): LotBounds => ({ low: Math.min(Math.max(bounds.low, low), high), high: Math.max(Math.min(bounds.high, high), low) });

/**
 * What the results of a lot say in numbers. `lot` is its count; results of numbers beyond it do not count (they are named elsewhere).
 * The confidence is the plan's; without a plan, or where the stones were not drawn at random, nothing follows for the untested ones.
 */
export function lotFigures(lot: number, all: readonly LotResult[], plan: PlanContent | null): LotFigures {
  const results = all.filter((result) => result.number <= lot);
  const counts = countOutcomes(results);
  const grown = grownOf(results);
  const undetermined = counts.undetermined;
  const untested = lot - results.length;
  const base = { lot, tested: results.length, untested, counts, grown, undetermined, notDiamond: counts['not-diamond'], certain: { low: grown, high: grown + undetermined + untested } };
  const sampled = plan === null ? null : sampleOf(results, plan, lot);
  if (plan === null || sampled === null || sampled.length === 0) return { ...base, sample: null, bounds: null };
  const sample = { size: sampled.length, planned: plan.size, grown: grownOf(sampled), undetermined: openOf(sampled), outside: results.length - sampled.length };
  const limits = (found: number) => lotBounds({ lot, sample: sample.size, found }, plan.confidence / 100, plan.sides);
  return {
    ...base, sample,
    bounds: {
      asNatural: within(limits(sample.grown), grown, grown + untested),
      asGrown: within(limits(sample.grown + sample.undetermined), grown + undetermined, grown + undetermined + untested),
    },
  };
}

import type { LotResult } from '../../../../app/lots/fold-results.ts';
import type { LotOutcome } from '../../../../app/lots/lot-outcome.ts';
import type { PlanContent, PlanInput } from '../../../../app/lots/lot-record.ts';
import { makePlan } from '../../../../app/lots/make-plan.ts';

export const WANTED: PlanInput = { aim: { is: 'detect', percent: 5 }, confidence: 95, sides: 'upper', drawn: 'list', seed: 11, reason: 'First look at a new source.', method: 'short-wave ultraviolet, invented viewer' };

export function planOf(lot: number, change: Partial<PlanInput> = {}): PlanContent {
  const made = makePlan(lot, { ...WANTED, ...change });
  if (!made.ok) throw new Error(made.error.message);
  return made.value;
}

export const resultOf = (number: number, outcome: LotOutcome, more: Partial<LotResult> = {}): LotResult =>
  ({ number, outcome, at: '2026-11-25T09:00:00.000Z', by: 'Ada Invented', source: 'keyed', stoneId: null, before: null, ...more });

/** The numbers with their outcomes, natural unless said otherwise. */
export const resultsOf = (numbers: readonly number[], others: Readonly<Record<number, LotOutcome>> = {}): LotResult[] => numbers.map((n, i) => resultOf(n, others[i] ?? 'natural'));

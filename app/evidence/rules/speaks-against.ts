import type { ConclusionId } from '../../domain/conclusion.ts';
import { gradesOf } from '../grades-of.ts';
import { isAgainst } from '../hypothesis.ts';
import type { HypothesisId } from '../hypothesis.ts';
import type { WeighedFinding } from '../weighed-finding.ts';

/** What each conclusion about origin holds to be possible. */
export const HYPOTHESES_OF: Readonly<Partial<Record<ConclusionId, readonly HypothesisId[]>>> = {
  natural: ['natural-untreated', 'natural-treated'], 'grown-cvd': ['cvd-as-grown', 'cvd-treated'], 'grown-hpht': ['hpht-grown'],
  'grown-undetermined-method': ['cvd-as-grown', 'cvd-treated', 'hpht-grown'], 'not-diamond': ['not-diamond'],
};

/** Counted findings that speak against all that the conclusion holds to be possible. */
export function speaksAgainst(conclusion: ConclusionId, counted: readonly WeighedFinding[]): WeighedFinding[] {
  const held = HYPOTHESES_OF[conclusion];
  if (held === undefined) return [];
  return counted.filter((finding) => held.every((id) => isAgainst(gradesOf(finding)[id])));
}

import type { ConclusionId } from '../../app/domain/conclusion.ts';
import type { Supports } from '../../app/domain/finding.ts';
import type { FindingView } from '../../app/contract/work.ts';

/** Token of the rule at the left of a note: what the finding supports. Findings without weight get a hairline. */
export function findingToken(supports: Supports): string {
  switch (supports) {
    case 'natural': return 'natural';
    case 'grown': case 'grown-cvd': return 'cvd';
    case 'grown-hpht': return 'hpht';
    case 'not-diamond': return 'warn';
    case 'treatment': return 'ink2';
    case 'diamond': case 'none': return 'line';
  }
}

const OPPOSED: Readonly<Record<ConclusionId, readonly Supports[]>> = {
  natural: ['grown', 'grown-cvd', 'grown-hpht', 'not-diamond'],
  'grown-cvd': ['natural', 'grown-hpht', 'not-diamond'],
  'grown-hpht': ['natural', 'grown-cvd', 'not-diamond'],
  'grown-undetermined-method': ['natural', 'not-diamond'],
  'not-diamond': ['diamond', 'natural', 'grown', 'grown-cvd', 'grown-hpht'],
  undetermined: [],
  'out-of-scope': [],
};

/** Does a finding of this kind speak against that conclusion? */
export const speaksAgainst = (supports: Supports, conclusion: ConclusionId): boolean => OPPOSED[conclusion].includes(supports);

const STRENGTH_ORDER = { diagnostic: 0, strong: 1, supporting: 2, neutral: 3 } as const;
/** Identity first, then by weight, then as found. */
export function findingsInOrder(findings: readonly FindingView[]): FindingView[] {
  const identity = (f: FindingView): number => (f.supports === 'diamond' || f.supports === 'not-diamond' ? 0 : 1);
  return findings.map((finding, i) => ({ finding, i })).sort((a, b) =>
    identity(a.finding) - identity(b.finding) || STRENGTH_ORDER[a.finding.strength] - STRENGTH_ORDER[b.finding.strength] || a.i - b.i).map(({ finding }) => finding);
}

/** Those that stand in the margin, and those that are folded away below. */
export function splitFindings(findings: readonly FindingView[]): { readonly standing: FindingView[]; readonly folded: FindingView[] } {
  const ordered = findingsInOrder(findings);
  return { standing: ordered.filter((f) => f.state === 'proposed' || f.state === 'accepted'), folded: ordered.filter((f) => f.state === 'set-aside' || f.state === 'replaced') };
}

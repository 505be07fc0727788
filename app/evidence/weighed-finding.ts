import type { FindingFact } from '../domain/finding.ts';

/** A finding with what the laboratory did with it. */
export type WeighedFinding = FindingFact & {
  readonly id: string;
  /** False where the run's instrument was not in order. */
  readonly counts: boolean;
  /** True where the stone’s setting forbids the test: what was read may be the mount’s. */
  readonly barred?: boolean | undefined;
  readonly state: 'proposed' | 'accepted' | 'set-aside' | 'replaced';
  /** Number of the run, or null for a finding without one. */
  readonly run: string | null;
};

/** The two answers to where a diamond grew. */
export type Side = 'natural' | 'grown';

/** The side a finding speaks for, or null where it answers another question. */
export function sideOf(finding: Pick<FindingFact, 'supports'>): Side | null {
  switch (finding.supports) {
    case 'natural': return 'natural';
    case 'grown': case 'grown-cvd': case 'grown-hpht': return 'grown';
    default: return null;
  }
}

export const isHeavy = (finding: Pick<FindingFact, 'strength'>): boolean => finding.strength === 'strong' || finding.strength === 'diagnostic';
export const hasWeight = (finding: Pick<FindingFact, 'strength'>): boolean => finding.strength !== 'neutral';

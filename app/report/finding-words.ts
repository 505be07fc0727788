import type { Strength, Supports } from '../domain/finding.ts';

const SUPPORTED: Readonly<Record<Supports, string>> = {
  diamond: 'diamond', 'not-diamond': 'a material other than diamond', natural: 'natural growth', grown: 'laboratory growth',
  'grown-cvd': 'CVD growth', 'grown-hpht': 'HPHT growth', treatment: 'treatment', none: '',
};

const STRENGTH: Readonly<Record<Strength, string>> = { diagnostic: 'diagnostic for', strong: 'strong for', supporting: 'supports', neutral: '' };

/** What a finding says in a few words, where nobody wrote it out: "strong for CVD growth". */
export function findingWords(strength: Strength, supports: Supports): string {
  if (supports === 'none' || strength === 'neutral') return 'no weight alone';
  return `${STRENGTH[strength]} ${SUPPORTED[supports]}`;
}

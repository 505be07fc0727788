import type { Strength } from '../../domain/finding.ts';
import { evidenceRowOf, isOwnWords } from '../evidence-table.ts';
import type { WeighedFinding } from '../weighed-finding.ts';

const RANK: Readonly<Record<Strength, number>> = { diagnostic: 3, strong: 2, supporting: 1, neutral: 0 };
const lesser = (a: Strength, b: Strength): Strength => (RANK[a] < RANK[b] ? a : b);

/**
 * The finding with no more weight than the evidence table allows its kind, for what the table says it speaks for, whoever recorded it.
 * A person's own words may be strong, they may not decide alone. What the table does not know has no weight.
 */
export function capWeight(finding: WeighedFinding): WeighedFinding {
  const row = evidenceRowOf(finding.code);
  const most: Strength = row?.most ?? (isOwnWords(finding.code) ? 'strong' : 'neutral');
  const strength = finding.supports === 'none' ? 'neutral' : lesser(finding.strength, most);
  return { ...finding, strength, supports: strength === 'neutral' ? 'none' : row?.supports ?? finding.supports };
}

import { evidenceRowOf } from './evidence-table.ts';
import { grades, HYPOTHESIS_IDS, NO_GRADES } from './hypothesis.ts';
import type { Grade, Grades } from './hypothesis.ts';
import type { WeighedFinding } from './weighed-finding.ts';

/** What a person's own words come to under each hypothesis, where they are strong. */
const OWN_WORDS: Readonly<Record<WeighedFinding['supports'], Grades>> = {
  diamond: grades('+ + + + + --'), 'not-diamond': grades('-- -- -- -- -- ++'), natural: grades('++ ++ - - - -'), grown: grades('- - ++ ++ ++ -'),
  'grown-cvd': grades('- - ++ ++ - -'), 'grown-hpht': grades('- - - - ++ -'), treatment: grades('- ++ - + + -'), none: NO_GRADES,
};

/** At most one step for or against: the observation was made less well than its kind can be. */
const weakened = (all: Grades): Grades => Object.fromEntries(HYPOTHESIS_IDS.map((id) => {
  const grade = all[id];
  return [id, (grade === 'excludes' ? -1 : Math.max(-1, Math.min(1, grade))) as Grade];
})) as Grades;

/**
 * What a finding says of each hypothesis: its row of the evidence table, weakened where it was recorded with less than the weight of
 * its kind (noise, resolution), nothing where it lost its weight altogether. `finding` after capWeight.
 */
export function gradesOf(finding: Pick<WeighedFinding, 'code' | 'strength' | 'supports'>): Grades {
  const row = evidenceRowOf(finding.code);
  if (row === undefined) return finding.strength === 'strong' ? OWN_WORDS[finding.supports] : weakened(OWN_WORDS[finding.supports]);
  if (row.most === 'neutral') return row.grades;
  if (finding.strength === 'neutral') return NO_GRADES;
  return finding.strength === row.most ? row.grades : weakened(row.grades);
}

import { gradesOf } from './grades-of.ts';
import { HYPOTHESIS_IDS, isAgainst, isFor } from './hypothesis.ts';
import type { HypothesisId } from './hypothesis.ts';
import { methodGroup } from './method-group.ts';
import { isHeavy } from './weighed-finding.ts';
import type { WeighedFinding } from './weighed-finding.ts';

/** How a hypothesis stands after all counted findings. Findings that say nothing of it are in neither list. */
export type HypothesisStanding = {
  readonly id: HypothesisId;
  readonly standing: 'leading' | 'open' | 'unlikely' | 'excluded';
  readonly for: readonly string[];
  readonly against: readonly string[];
};

export type HypothesisWeight = HypothesisStanding & {
  /** Sum over independent methods of the heaviest grade for and the heaviest against; −Infinity where excluded. */
  readonly score: number;
};

/** A method is one witness: at most three steps either way. */
const MOST_PER_METHOD = 3;
/** Below the best by this much, a hypothesis is called unlikely (judgement). */
const UNLIKELY_BELOW = 3;

const clamp = (value: number): number => Math.max(-MOST_PER_METHOD, Math.min(MOST_PER_METHOD, value));

function scoreOf(id: HypothesisId, counted: readonly WeighedFinding[]): number {
  const best = new Map<string, { up: number; down: number }>();
  for (const finding of counted) {
    const grade = gradesOf(finding)[id];
    if (grade === 'excludes' && isHeavy(finding)) return -Infinity;
    const value = grade === 'excludes' ? -MOST_PER_METHOD : grade;
    const group = methodGroup(finding.method);
    const { up, down } = best.get(group) ?? { up: 0, down: 0 };
    best.set(group, { up: Math.max(up, value), down: Math.min(down, value) });
  }
  return [...best.values()].reduce((sum, { up, down }) => sum + clamp(up + down), 0);
}

/** Each hypothesis with its score, in the order of the table. `counted` after capWeight. */
export function weighHypotheses(counted: readonly WeighedFinding[]): HypothesisWeight[] {
  const scores = HYPOTHESIS_IDS.map((id) => scoreOf(id, counted));
  const best = Math.max(...scores);
  return HYPOTHESIS_IDS.map((id, i) => {
    const score = scores[i]!;
    const standing = score === -Infinity ? 'excluded' : score === best && best > 0 ? 'leading' : score <= best - UNLIKELY_BELOW ? 'unlikely' : 'open';
    return {
      id, score, standing,
      for: counted.filter((finding) => isFor(gradesOf(finding)[id])).map((finding) => finding.id),
      against: counted.filter((finding) => isAgainst(gradesOf(finding)[id])).map((finding) => finding.id),
    };
  });
}

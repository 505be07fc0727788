import { methodGroup } from '../method-group.ts';
import { hasWeight, isHeavy, sideOf } from '../weighed-finding.ts';
import type { Side, WeighedFinding } from '../weighed-finding.ts';
import type { RuleId } from './rule-book.ts';

/** What was found for one side, and whether it is enough. */
export type NatureCase = {
  readonly side: Side;
  readonly all: readonly WeighedFinding[];
  readonly met: boolean;
  /** The findings that meet the rule; empty where it is not met. */
  readonly deciding: readonly WeighedFinding[];
  /** How the rule is met, or what it still asks for, as a sentence. */
  readonly rule: string;
  readonly ruleId: RuleId;
};

/** Two strong facts, not the same fact twice, from methods that witness independently. */
function twoStrong(heavy: readonly WeighedFinding[]): WeighedFinding[] {
  for (const first of heavy) {
    const second = heavy.find((other) => other.code !== first.code && methodGroup(other.method) !== methodGroup(first.method));
    if (second !== undefined) return [first, second];
  }
  return [];
}

/** One strong fact and two supporting ones, from three methods that witness independently. */
function oneStrongTwoSupporting(all: readonly WeighedFinding[], heavy: readonly WeighedFinding[]): WeighedFinding[] {
  for (const strong of heavy) {
    const chosen = [strong];
    for (const finding of all) {
      const isNew = chosen.every((other) => methodGroup(other.method) !== methodGroup(finding.method) && other.code !== finding.code);
      if (isNew) chosen.push(finding);
      if (chosen.length === 3) return chosen;
    }
  }
  return [];
}

function whatIsMissing(all: readonly WeighedFinding[], heavy: readonly WeighedFinding[]): string {
  if (all.length === 0) return 'No counted finding speaks for it.';
  if (heavy.length === 0) return 'Supporting findings alone do not decide.';
  const groups = new Set(heavy.map((finding) => methodGroup(finding.method))).size;
  const start = heavy.length === 1 ? 'One strong finding' : `${heavy.length} strong findings, ${groups === 1 ? 'all of one method' : 'all of the same fact'}`;
  return `${start}: the rule asks for a second strong finding from an independent method, or for two supporting ones from two others.`;
}

/**
 * A nature needs one diagnostic finding, or two strong ones from independent methods, or one strong with two supporting ones
 * from other methods. Several findings of one method are one witness. `counted` heaviest first.
 */
export function natureCase(side: Side, counted: readonly WeighedFinding[]): NatureCase {
  const all = counted.filter((finding) => sideOf(finding) === side && hasWeight(finding));
  const heavy = all.filter(isHeavy);
  const diagnostic = all.filter((finding) => finding.strength === 'diagnostic').slice(0, 1);
  if (diagnostic.length > 0) return { side, all, met: true, deciding: diagnostic, rule: 'One diagnostic finding meets the rule.', ruleId: 'one-diagnostic' };
  const pair = twoStrong(heavy);
  if (pair.length > 0) return { side, all, met: true, deciding: pair, rule: 'Two strong findings from independent methods meet the rule.', ruleId: 'two-strong' };
  const three = oneStrongTwoSupporting(all, heavy);
  if (three.length > 0) return { side, all, met: true, deciding: three, rule: 'One strong finding and two supporting ones from other methods meet the rule.', ruleId: 'strong-and-two-supporting' };
  return { side, all, met: false, deciding: [], rule: whatIsMissing(all, heavy), ruleId: 'not-enough' };
}

import type { Proposal } from '../../app/evidence/proposal.ts';

/** Where the chain of deciding findings ends: what follows only adds to it. */
const RULE = / meets? the rule\.$/;
/** Sentences after the rule that an examiner would still write down. */
const KEPT = /^(CVD growth|HPHT growth|The growth method|No finding names|Nothing recorded)/;

/** The reasons of a proposal as an examiner would write them: the deciding findings and the rule, without everything that only adds weight. */
export function examinersWords({ reasons }: Pick<Proposal, 'reasons'>): string {
  const rule = reasons.findIndex((sentence) => RULE.test(sentence));
  return rule < 0 ? reasons.join(' ') : [...reasons.slice(0, rule + 1), ...reasons.slice(rule + 1).filter((sentence) => KEPT.test(sentence))].join(' ');
}

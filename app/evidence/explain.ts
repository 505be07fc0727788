import type { Decision } from './decide.ts';
import { evidenceRowOf } from './evidence-table.ts';
import { gradesOf } from './grades-of.ts';
import { isAgainst, isFor, NO_GRADES } from './hypothesis.ts';
import type { ChainLink } from './proposal.ts';
import type { ReadFindings } from './read-findings.ts';
import { HYPOTHESES_OF } from './rules/speaks-against.ts';
import { RULE_BOOK } from './rules/rule-book.ts';
import { quoted, weighed } from './sentences.ts';
import { hasWeight, sideOf } from './weighed-finding.ts';
import type { WeighedFinding } from './weighed-finding.ts';

const withoutStop = (sentence: string): string => sentence.replace(/\.$/, '');

function roleOf(finding: WeighedFinding, { conclusion, deciding }: Decision): Exclude<ChainLink['role'], 'ignored'> {
  if (deciding.some((one) => one.id === finding.id && one.code === finding.code)) return 'decides';
  const held = HYPOTHESES_OF[conclusion];
  if (held === undefined) return hasWeight(finding) ? 'weighs' : 'noted';
  const grades = gradesOf(finding);
  const side = sideOf(finding);
  if (hasWeight(finding) && side !== null && conclusion !== 'not-diamond' && side !== (conclusion === 'natural' ? 'natural' : 'grown')) return 'against';
  if (held.every((id) => isAgainst(grades[id]))) return 'against';
  return hasWeight(finding) && held.some((id) => isFor(grades[id])) ? 'adds' : 'noted';
}

/** 'Strong for natural growth: N3 (…), by the evidence table “N3 or cape lines”: decides by the rule that …' */
function sentenceOf(finding: WeighedFinding, role: ChainLink['role'], decision: Decision): string {
  const said = withoutStop(weighed(finding));
  switch (role) {
    case 'decides': return `${said}. ${RULE_BOOK[decision.rule]}`;
    case 'adds': return `${said}: speaks the same way.`;
    case 'weighs': return `${said}: has weight, and does not settle the stone.`;
    case 'against': return hasWeight(finding) ? `${said}: speaks against the conclusion.` : `Unusual for this conclusion: ${quoted(finding)}.`;
    case 'noted': case 'ignored': return `${said}.`;
  }
}

/** For every finding the way from finding over rule to weight, those that decided first. */
export function explain({ counted, ignored }: ReadFindings, decision: Decision): ChainLink[] {
  const facts = (finding: WeighedFinding) => ({
    finding: finding.id, code: finding.code, method: finding.method, run: finding.run, row: evidenceRowOf(finding.code)?.id ?? '', strength: finding.strength, supports: finding.supports,
  });
  const order: readonly ChainLink['role'][] = ['decides', 'adds', 'weighs', 'against', 'noted'];
  const links = counted.map((finding): ChainLink => {
    const role = roleOf(finding, decision);
    return { ...facts(finding), grades: gradesOf(finding), role, rule: role === 'noted' ? 'never-alone' : decision.rule, sentence: sentenceOf(finding, role, decision) };
  }).sort((a, b) => order.indexOf(a.role) - order.indexOf(b.role));
  return [...links, ...ignored.map(({ finding, rule, sentence }): ChainLink => ({ ...facts(finding), grades: { ...NO_GRADES }, role: 'ignored', rule, sentence }))];
}


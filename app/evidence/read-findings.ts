import { METHODS, type MethodId } from '../domain/method.ts';
import { evidenceRowOf, isOwnWords } from './evidence-table.ts';
import { capWeight } from './rules/cap-weight.ts';
import { withCompanions } from './rules/needs-companion.ts';
import type { RuleId } from './rules/rule-book.ts';
import { quoted } from './sentences.ts';
import { sortFindings } from './sort-findings.ts';
import type { WeighedFinding } from './weighed-finding.ts';

export type IgnoredFinding = { readonly finding: WeighedFinding; readonly rule: RuleId; readonly sentence: string };

export type ReadFindings = {
  /** What the rules may use, heaviest first, in an order that does not depend on the order of entry. */
  readonly counted: readonly WeighedFinding[];
  /** What they may not, each with the reason, as sentences. */
  readonly ignored: readonly IgnoredFinding[];
};

/** Why a setting makes a test of this method doubtful. */
const barredWords = (method: MethodId): string => (METHODS[method].possibleMounted === 'no'
  ? 'doubtful, because the metal of the setting may have decided it; test the stone unmounted'
  : 'doubtful, because no light passes through a stone that is closed at the back or whose setting is not stated; test it unmounted, or state the open back');

function reasonToIgnore({ state, counts, barred, code, method }: WeighedFinding): { readonly rule: RuleId; readonly why: string } | null {
  if (state === 'set-aside') return { rule: 'set-aside', why: 'set aside by the examiner' };
  if (barred === true) return { rule: 'setting-allows', why: barredWords(method) };
  if (!counts) return { rule: 'instrument-in-order', why: 'the instrument of this run was not in order on the day; repeat the test' };
  return evidenceRowOf(code) === undefined && !isOwnWords(code) ? { rule: 'not-in-table', why: `its code “${code}” is not in the evidence table` } : null;
}

/** Sorts findings into those that count and those that do not. Replaced ones are history and left out of both. */
export function readFindings(findings: readonly WeighedFinding[]): ReadFindings {
  const present = sortFindings(findings.filter((finding) => finding.state !== 'replaced').map(capWeight));
  const counted: WeighedFinding[] = [];
  const ignored: IgnoredFinding[] = [];
  for (const finding of present) {
    const reason = reasonToIgnore(finding);
    if (reason === null) counted.push(finding);
    else ignored.push({ finding, rule: reason.rule, sentence: `Does not count: ${quoted(finding)}: ${reason.why}.` });
  }
  return { counted: sortFindings(withCompanions(counted)), ignored };
}

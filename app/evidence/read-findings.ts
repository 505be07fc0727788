import { METHOD_IDS } from '../domain/method.ts';
import { STRENGTHS } from '../domain/finding.ts';
import { capWeight } from './rules/cap-weight.ts';
import { quoted } from './sentences.ts';
import type { WeighedFinding } from './weighed-finding.ts';

export type ReadFindings = {
  /** What the rules may use, heaviest first, in an order that does not depend on the order of entry. */
  readonly counted: readonly WeighedFinding[];
  /** What they may not, each with the reason, as sentences. */
  readonly ignored: readonly { readonly finding: WeighedFinding; readonly sentence: string }[];
};

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Heaviest first, then by method, then by text: the same findings always come in the same order. */
function compare(a: WeighedFinding, b: WeighedFinding): number {
  return STRENGTHS.indexOf(a.strength) - STRENGTHS.indexOf(b.strength)
    || METHOD_IDS.indexOf(a.method) - METHOD_IDS.indexOf(b.method)
    || compareText(a.code, b.code) || compareText(a.statement, b.statement) || compareText(a.id, b.id);
}

function reasonToIgnore(finding: WeighedFinding): string | null {
  if (finding.state === 'set-aside') return 'set aside by the examiner';
  return finding.counts ? null : 'the instrument of this run was not in order on the day; repeat the test';
}

/** Sorts findings into those that count and those that do not. Replaced ones are history and left out of both. */
export function readFindings(findings: readonly WeighedFinding[]): ReadFindings {
  const present = findings.filter((finding) => finding.state !== 'replaced').map(capWeight).sort(compare);
  return {
    counted: present.filter((finding) => reasonToIgnore(finding) === null),
    ignored: present.flatMap((finding) => {
      const reason = reasonToIgnore(finding);
      return reason === null ? [] : [{ finding, sentence: `Does not count: ${quoted(finding)}: ${reason}.` }];
    }),
  };
}

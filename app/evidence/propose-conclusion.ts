import { METHOD_IDS } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';
import { decide } from './decide.ts';
import { EVIDENCE_TABLE_VERSION } from './evidence-table.ts';
import { explain } from './explain.ts';
import { missingSentences } from './missing-tests.ts';
import { nextTests } from './next-tests.ts';
import { isPossible } from './possible-methods.ts';
import { proposalBasis, RULES_VERSION } from './proposal.ts';
import type { Proposal } from './proposal.ts';
import type { ProposalInput } from './proposal-input.ts';
import { readFindings } from './read-findings.ts';
import { sortFindings } from './sort-findings.ts';
import { weighHypotheses } from './weigh-hypotheses.ts';

export type { ProposalInput } from './proposal-input.ts';

const DISPUTED = 'Two persons disagree on this stone: it goes to further testing, and is concluded anew.';

const inOrder = (methods: Iterable<MethodId>): MethodId[] => {
  const set = new Set(methods);
  return METHOD_IDS.filter((method) => set.has(method));
};

/** A method all of whose findings do not count, because its instrument was not in order or the setting forbids it, is still to be done. */
function effectivelyDone(input: ProposalInput): Set<MethodId> {
  const spoiled = input.findings.filter((finding) => finding.state !== 'replaced' && (!finding.counts || finding.barred === true)).map((finding) => finding.method);
  const sound = new Set(input.findings.filter((finding) => finding.state !== 'replaced' && finding.counts && finding.barred !== true).map((finding) => finding.method));
  return new Set(input.methodsDone.filter((method) => !spoiled.includes(method) || sound.has(method)));
}

/** The input in one fixed order and without what the rules do not read, so that equal evidence gives equal bytes. */
const basisOf = (input: ProposalInput): Proposal['basis'] => proposalBasis.parse({
  ...input, findings: sortFindings(input.findings.filter((finding) => finding.state !== 'replaced')), methodsDone: inOrder(input.methodsDone), methodsAvailable: inOrder(input.methodsAvailable),
});

/**
 * What the findings of one stone amount to: a proposal with its reasons, what speaks against it, what is missing, and what to do next.
 * Order of findings and methods does not matter. Findings set aside, of runs whose instrument was not in order, or of tests that the setting forbids, are named in
 * `missing` and do not count; proposed and accepted ones count alike. Weights and their sources: the evidence table.
 */
export function proposeConclusion(input: ProposalInput): Proposal {
  const read = readFindings(input.findings);
  const { counted, ignored } = read;
  const { colourClass } = input.stone;
  const decision = decide(counted, colourClass);
  const done = effectivelyDone(input);
  const isOpen = decision.conclusion === 'undetermined' || decision.conclusion === 'grown-undetermined-method';
  const possible = inOrder(input.methodsAvailable).filter((method) => isPossible(method, input.stone));
  return {
    rules: RULES_VERSION,
    table: EVIDENCE_TABLE_VERSION,
    conclusion: decision.conclusion,
    rule: decision.rule,
    reasons: [...decision.reasons],
    against: [...decision.against],
    missing: [...(input.disputed === true ? [DISPUTED] : []), ...ignored.map((entry) => entry.sentence), ...missingSentences(input, done, isOpen)],
    nextTests: nextTests(decision.conclusion, counted, possible, done, colourClass, input.disputed),
    counted: counted.map((finding) => finding.id).sort(),
    chain: explain(read, decision),
    hypotheses: weighHypotheses(counted).map(({ id, standing, for: speakFor, against }) => ({ id, standing, for: [...speakFor], against: [...against] })),
    basis: basisOf(input),
  };
}

import type { ColourClass } from '../domain/colour-class.ts';
import { METHOD_IDS } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';
import { decide } from './decide.ts';
import { METHOD_REACH } from './method-reach.ts';
import { nextTests } from './next-tests.ts';
import { impossibleMethods, isPossible } from './possible-methods.ts';
import type { StoneSetting } from './possible-methods.ts';
import { RULES_VERSION } from './proposal.ts';
import type { Proposal } from './proposal.ts';
import { unseenLayer } from './rules/composite-suspicion.ts';
import { readFindings } from './read-findings.ts';
import { capitalised, listed, METHOD_WORDS } from './sentences.ts';
import type { WeighedFinding } from './weighed-finding.ts';

export type ProposalInput = {
  readonly stone: StoneSetting & { readonly colourClass: ColourClass };
  readonly findings: readonly WeighedFinding[];
  /** Methods with a run on this stone. */
  readonly methodsDone: readonly MethodId[];
  /** Methods the laboratory has an instrument for, or that need none. */
  readonly methodsAvailable: readonly MethodId[];
};

const inOrder = (methods: Iterable<MethodId>): MethodId[] => {
  const set = new Set(methods);
  return METHOD_IDS.filter((method) => set.has(method));
};
const words = (methods: readonly MethodId[]): string => listed(methods.map((method) => METHOD_WORDS[method]));

/** A method all of whose findings do not count, because its instrument was not in order, is still to be done. */
function effectivelyDone(input: ProposalInput): Set<MethodId> {
  const spoiled = input.findings.filter((finding) => finding.state !== 'replaced' && !finding.counts).map((finding) => finding.method);
  const sound = new Set(input.findings.filter((finding) => finding.state !== 'replaced' && finding.counts).map((finding) => finding.method));
  return new Set(input.methodsDone.filter((method) => !spoiled.includes(method) || sound.has(method)));
}

/** What was not done or cannot be, in sentences. Methods that say nothing of origin or diamond are not missed. */
function missingSentences(input: ProposalInput, done: ReadonlySet<MethodId>, isOpen: boolean): string[] {
  const { stone } = input;
  const useful = METHOD_IDS.filter((method) => METHOD_REACH[method].length > 0);
  const undone = useful.filter((method) => !done.has(method) && isPossible(method, stone));
  const here = new Set(input.methodsAvailable);
  const notDone = undone.filter((method) => here.has(method));
  const notHere = undone.filter((method) => !here.has(method));
  const impossible = impossibleMethods(stone).filter((method) => !done.has(method));
  return [
    ...(stone.mounted && impossible.length > 0
      ? [`Not possible on this mounted stone${stone.setting === null ? ' (setting not stated, taken as closed)' : stone.setting === 'closed-back' ? ' (closed back)' : ''}: ${words(impossible)}.`]
      : []),
    ...(notDone.length > 0 ? [`Not done: ${words(notDone)}.`] : []),
    ...(isOpen && notHere.length > 0 ? [`No instrument here for ${words(notHere)}: another laboratory could do ${notHere.length === 1 ? 'it' : 'them'}.`] : []),
  ].map(capitalised);
}

/**
 * What the findings of one stone amount to: a proposal with its reasons, what speaks against it, what is missing, and what to do next.
 * Order of findings and methods does not matter. Findings set aside, or of runs whose instrument was not in order, are named in
 * `missing` and do not count; proposed and accepted ones count alike. Sources of the weights stand with the findings.
 */
export function proposeConclusion(input: ProposalInput): Proposal {
  const { counted, ignored } = readFindings(input.findings);
  const { colourClass } = input.stone;
  const decision = decide(counted, colourClass);
  const done = effectivelyDone(input);
  const isOpen = decision.conclusion === 'undetermined' || decision.conclusion === 'grown-undetermined-method';
  const possible = inOrder(input.methodsAvailable).filter((method) => isPossible(method, input.stone));
  return {
    rules: RULES_VERSION,
    conclusion: decision.conclusion,
    reasons: [...decision.reasons],
    against: [...decision.against],
    missing: [...ignored.map((entry) => entry.sentence), ...missingSentences(input, done, isOpen), ...(decision.conclusion === 'natural' ? unseenLayer(counted) : [])],
    nextTests: nextTests(decision.conclusion, counted, possible, done, colourClass),
    counted: counted.map((finding) => finding.id).sort(),
  };
}

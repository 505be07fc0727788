import { CONCLUSION_WORDS, type ConclusionId } from '../domain/conclusion.ts';
import { readFindings } from '../evidence/read-findings.ts';
import { diamondCheck } from '../evidence/rules/diamond-check.ts';
import type { WeighedFinding } from '../evidence/weighed-finding.ts';
import { err, ok, type Result } from '../result.ts';

export type ConclusionPlan = {
  readonly conclusion: ConclusionId;
  readonly departure: string;
  /** What the rules propose for the same findings. */
  readonly proposed: ConclusionId;
  readonly findings: readonly WeighedFinding[];
};

export type ConclusionRefusal = { readonly code: 'refused' | 'invalid-input'; readonly message: string; readonly next: string; readonly field?: string };

/** Conclusions that say nothing about the origin of a diamond, and so need no proof that it is one. */
const WITHOUT_DIAMOND_CHECK: readonly ConclusionId[] = ['undetermined', 'out-of-scope', 'not-diamond'];

/** What may weigh: accepted findings of runs that count, each with no more than the weight its kind may have. */
const countingFindings = (findings: readonly WeighedFinding[]): readonly WeighedFinding[] =>
  readFindings(findings.filter((finding) => finding.state === 'accepted')).counted;

/** Diamond must be shown by a run: what a person wrote beside the runs does not replace the test. */
export function diamondCheckPassed(findings: readonly WeighedFinding[]): boolean {
  const tested = countingFindings(findings).filter((finding) => finding.supports !== 'diamond' || finding.run !== null);
  return diamondCheck(tested).state === 'passed';
}

function naturalIsBorne(findings: readonly WeighedFinding[]): boolean {
  const speaking = countingFindings(findings).filter((finding) => finding.supports === 'natural' && finding.strength !== 'neutral');
  return speaking.length > 1 || speaking.some((finding) => finding.strength !== 'supporting');
}

/**
 * What no person may conclude, whatever reason is given, and when a reason must be given.
 * @returns ok, or the refusal with its sentence
 */
export function checkConclusion(plan: ConclusionPlan): Result<null, ConclusionRefusal> {
  const undecided = plan.findings.filter((finding) => finding.state === 'proposed').length;
  if (undecided > 0) {
    return err({ code: 'refused', message: `${undecided === 1 ? 'One finding waits' : `${undecided} findings wait`} for a decision.`, next: 'Accept each finding or set it aside with a reason, then conclude.' });
  }
  if (!WITHOUT_DIAMOND_CHECK.includes(plan.conclusion) && !diamondCheckPassed(plan.findings)) {
    return err({ code: 'refused', message: `“${CONCLUSION_WORDS[plan.conclusion]}” can't be concluded: the diamond check has not passed.`, next: 'Record a run that shows the diamond line and accept that finding, or conclude undetermined.' });
  }
  if (plan.conclusion === 'natural' && !naturalIsBorne(plan.findings)) {
    return err({ code: 'refused', message: 'Natural can’t be concluded from less than two supporting findings or one that is stronger.', next: 'Record a further independent test, or conclude undetermined.' });
  }
  if (plan.conclusion !== plan.proposed && plan.departure.trim() === '') {
    return err({ code: 'invalid-input', field: 'departure', message: `The rules propose “${CONCLUSION_WORDS[plan.proposed]}”: write why you depart from it.`, next: 'Give the reason for the departure; it is kept and printed.' });
  }
  return ok(null);
}

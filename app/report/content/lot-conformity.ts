import { paragraphsOf } from './paragraphs-of.ts';
import type { SourceLot } from './lot-part.ts';
import type { ReportSource } from './report-source.ts';

/** Whether a lot is said to be accepted or not by a plan: that is a statement of conformity (ISO/IEC 17025:2017, 7.8.6). */
const isJudged = ({ lot, results }: SourceLot): boolean => lot.plan?.content.aim.is === 'acceptance' && lot.plan.content.acceptance !== null && results.length > 0;

export const statesConformity = ({ lots }: Pick<ReportSource, 'lots'>): boolean => (lots ?? []).some(isJudged);

const ACCEPTANCE_RULE = 'A lot is said to be accepted, or not, by the acceptance plan that is named with it and by nothing else: by the number of tested stones that are not natural diamond, against the number that the plan allows. Stones that stay undetermined count against it until they are decided. The risks of the plan stand with the lot.';
const NOTHING_ELSE = 'No other statement of conformity is made. Opinions follow the laboratory’s written rules, whose version stands with each opinion.';

/** The decision rule as it is printed: the laboratory's own text, and before it the rule by which its lots are judged. The supplied text says that nothing is judged, so it gives way. */
export function decisionRule(source: Pick<ReportSource, 'lots' | 'texts'>): string[] {
  const { text, version } = source.texts['decision-rule'];
  if (!statesConformity(source)) return paragraphsOf(text);
  return [ACCEPTANCE_RULE, ...(version === 0 ? [NOTHING_ELSE] : paragraphsOf(text))];
}

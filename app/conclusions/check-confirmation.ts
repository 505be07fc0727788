import type { ConclusionId } from '../domain/conclusion.ts';
import { err, ok, type Result } from '../result.ts';

export type ConfirmationPlan = {
  readonly personId: string;
  readonly concludedById: string;
  readonly agrees: boolean;
  readonly reason: string;
  readonly conclusion: ConclusionId;
  /** The second person's own conclusion, where one was stated. */
  readonly outcome: ConclusionId | null;
  /** True where the first conclusion is not shown to this person yet. */
  readonly withheld: boolean;
  /** True where a later conclusion of the same stone stands. */
  readonly superseded: boolean;
  readonly alreadyConfirmed: boolean;
};

export type ConfirmationRefusal = { readonly code: 'refused' | 'invalid-input' | 'conflict'; readonly message: string; readonly next: string; readonly field?: string };

/** Whether a second person may confirm a conclusion, or disagree with it. */
export function checkConfirmation(plan: ConfirmationPlan): Result<null, ConfirmationRefusal> {
  if (plan.superseded) return err({ code: 'conflict', message: 'A newer conclusion of this stone stands; only the newest can be confirmed.', next: 'Open the stone again and look at the newest conclusion.' });
  if (plan.alreadyConfirmed) return err({ code: 'conflict', message: 'A second person has already answered to this conclusion.', next: 'If it must change, write a new conclusion; it is then confirmed anew.' });
  if (plan.personId === plan.concludedById) return err({ code: 'refused', message: 'A conclusion is confirmed by a second person, never by the one who wrote it.', next: 'Ask a colleague to look at the stone and answer.' });
  if (plan.withheld) return err({ code: 'refused', message: 'This house reads twice: the first conclusion is shown after you have stated yours.', next: 'State your own conclusion of the stone, then answer to the first.' });
  if (!plan.agrees && plan.reason.trim() === '') return err({ code: 'invalid-input', field: 'reason', message: 'Write why you do not agree.', next: 'Give the reason; the examiner needs it to go on.' });
  if (plan.agrees && plan.outcome !== null && plan.outcome !== plan.conclusion) return err({ code: 'invalid-input', field: 'outcome', message: 'You agree, but your own conclusion is another one.', next: 'Disagree, and write why; the examiner then goes on from there.' });
  return ok(null);
}

import { atMost } from './hypergeometric.ts';
import { highest } from './lot-bounds.ts';
import type { PlanContent } from './lot-record.ts';

/** A lot that a plan should hardly ever accept is accepted by it with this probability at most: the usual point of a plan's curve (MIL-STD-105E, 4.11 and tables VI-A and VII-A, from memory). */
const ACCEPTED_AT_MOST = 0.1;

export type AcceptanceRisks = {
  /** A lot at the acceptable quality level holds so many stones against it, and is refused with this probability. */
  readonly good: { readonly against: number; readonly refused: number };
  /** A lot with so many, or more, is accepted with a probability of `accepted` at most. */
  readonly bad: { readonly against: number; readonly accepted: number };
};

/** Risks of a single sampling plan for its own lot, exact (hypergeometric), as ISO/IEC 17025:2017, 7.8.6.1 asks of a decision rule; null where it is no such plan, or every stone is tested. */
export function acceptanceRisks({ aim, acceptance, lot, size }: Pick<PlanContent, 'aim' | 'acceptance' | 'lot' | 'size'>): AcceptanceRisks | null {
  if (aim.is !== 'acceptance' || acceptance === null || size >= lot) return null;
  const accepted = (against: number): number => atMost(acceptance.accept, { lot, grown: against, sample: size });
  const good = Math.floor((lot * aim.aql) / 100);
  const bad = Math.min(lot, highest({ lot, sample: size, found: acceptance.accept }, ACCEPTED_AT_MOST) + 1);
  return { good: { against: good, refused: 1 - accepted(good) }, bad: { against: bad, accepted: accepted(bad) } };
}

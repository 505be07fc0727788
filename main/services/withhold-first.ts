import { mayBeWithheld, SHOWN_LATER, stonesOf, withholdCase, withholdStone } from '../../app/conclusions/withhold.ts';
import type { AuditView, CaseView, StoneSummary } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { conclusionsWithheld, withheldAmong, withheldOfCases } from '../../db/store/second-readings.ts';
import { refused } from './failures.ts';
import type { Call } from './service.ts';

type Viewed = { readonly casebook: Casebook; readonly call: Call };

/** A list of stones as the person at the window may see it. */
export function stonesAsSeen<S extends Pick<StoneSummary, 'id' | 'conclusion' | 'stage'>>(stones: readonly S[], { casebook, call }: Viewed): S[] {
  const withheld = withheldAmong(casebook.handle.read, call.session.personId, mayBeWithheld(stones));
  return stones.map((stone) => withholdStone(stone, withheld));
}

/** A case as the person at the window may see it. */
export const caseAsSeen = (view: CaseView, { casebook, call }: Viewed): CaseView =>
  withholdCase(view, withheldAmong(casebook.handle.read, call.session.personId, mayBeWithheld(stonesOf(view))));

/** Operations whose entry in the audit ledger says what a person concluded. */
const TELLING: ReadonlySet<string> = new Set(['conclusions.conclude', 'conclusions.read']);

/** Entries of the audit ledger without what is withheld; number, time, person and digest stay. */
export function auditAsSeen(rows: readonly AuditView[], { casebook, call }: Viewed): AuditView[] {
  const withheld = conclusionsWithheld(casebook.handle.read, call.session.personId, rows.filter(({ operation }) => TELLING.has(operation)).map(({ subject }) => subject));
  return rows.map((row) => (withheld.has(row.subject) ? { ...row, content: JSON.stringify({ withheld: SHOWN_LATER }) } : row));
}

/** Everything of a case can't be handed out without what is withheld: refused while there is such a stone. */
export function refuseWithheld(caseIds: readonly string[], { casebook, call }: Viewed): { readonly ok: false; readonly error: Failure } | null {
  const unread = withheldOfCases(casebook.handle.read, call.session.personId, caseIds);
  const [first] = unread;
  if (first === undefined) return null;
  const others = unread.length === 1 ? '' : unread.length === 2 ? ' and one more stone' : ` and ${unread.length - 1} more stones`;
  return refused(`The bundle would show you what was concluded of ${first.label} of ${first.caseNumber}${others} before you have stated yours.`, 'State your conclusion on the page of the stone, or let the person who concluded write the bundle.');
}

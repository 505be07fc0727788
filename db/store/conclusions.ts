import { checkConfirmation, type ConfirmationRefusal } from '../../app/conclusions/check-confirmation.ts';
import type { ConclusionView } from '../../app/contract/work.ts';
import type { ConclusionId } from '../../app/domain/conclusion.ts';
import type { Proposal } from '../../app/evidence/proposal.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { conclusion, confirmation, secondReading } from '../schema/index.ts';
import { conclusionById, conclusionsOfStone } from './conclusions-read.ts';
import { readingOf, withheldAmong } from './second-readings.ts';

type PersonChange = Change & { readonly personId: string };

export type NewConclusion = { readonly stoneId: string; readonly conclusion: ConclusionId; readonly reasons: string; readonly departure: string; readonly proposal: Proposal };

export type ConfirmationAnswer = {
  readonly conclusionId: string; readonly agrees: boolean; readonly reason: string;
  /** The second person's own conclusion, where one is stated now. */
  readonly outcome: ConclusionId | null;
};

export type ConclusionsStore = {
  ofStone(stoneId: string): Promise<ConclusionView[]>;
  get(id: string): Promise<ConclusionView | null>;
  /**
   * Writes a conclusion beside the earlier ones. `weigh` is called inside the transaction, so that what is weighed is
   * what stands at that moment; what it refuses is not written.
   */
  conclude<E>(change: PersonChange, stoneId: string, weigh: (tx: WriteTx) => Result<NewConclusion, E>): Promise<Result<ConclusionView, E>>;
  /** A person states their own conclusion, or null, and is shown the first from then on. Null where there is no such conclusion. */
  read(change: PersonChange, conclusionId: string, outcome: ConclusionId | null): Promise<Result<ConclusionView | null, ConfirmationRefusal>>;
  /** A second person's answer. Null where there is no such conclusion. */
  confirm(change: PersonChange, answer: ConfirmationAnswer): Promise<Result<ConclusionView | null, ConfirmationRefusal>>;
};

const ALREADY_SHOWN: ConfirmationRefusal = { code: 'conflict', message: 'The first conclusion is shown to you already.', next: 'Answer to it; it counts as seen, not as a second reading.' };
const NEWER: ConfirmationRefusal = { code: 'conflict', message: 'A newer conclusion of this stone stands.', next: 'Open the stone again and state yours there.' };

const caseOf = (tx: WriteTx, stoneId: string): { case_id: string; label: string } => {
  const row = tx.get<{ case_id: string; label: string }>('SELECT case_id, label FROM stone WHERE id = @stoneId', { stoneId });
  if (row === undefined) throw new Error(`stone ${stoneId} is not there`);
  return row;
};

export function createConclusionsStore(handle: StoreHandle, newId: () => string): ConclusionsStore {
  return {
    async ofStone(stoneId) { return conclusionsOfStone(handle.read, stoneId); },
    async get(id) { return conclusionById(handle.read, id); },
    conclude: (change, stoneId, weigh) => handle.transactResult((tx) => {
      const weighed = weigh(tx);
      if (!weighed.ok) return weighed;
      const { value } = weighed;
      const stone = caseOf(tx, stoneId);
      const ordinal = (conclusionsOfStone(tx, stoneId).at(-1)?.ordinal ?? 0) + 1;
      const id = newId();
      tx.orm.insert(conclusion).values({
        id, caseId: stone.case_id, stoneId, ordinal, conclusion: value.conclusion, reasons: value.reasons, proposal: JSON.stringify(value.proposal),
        rules: value.proposal.rules, findingIds: JSON.stringify(value.proposal.counted), departure: value.departure, personId: change.personId, at: change.at,
      }).run();
      appendAudit(tx, change, {
        subject: id, caseId: stone.case_id,
        content: {
          stone: stone.label, ordinal, conclusion: value.conclusion, reasons: value.reasons, departure: value.departure,
          proposed: value.proposal.conclusion, rules: value.proposal.rules, counted: value.proposal.counted,
        },
      });
      return ok(conclusionById(tx, id)!);
    }),
    read: (change, id, outcome) => handle.transactResult<ConclusionView | null, ConfirmationRefusal>((tx) => {
      const found = conclusionById(tx, id);
      if (found === null) return ok(null);
      if (!withheldAmong(tx, change.personId, [found.stoneId]).has(found.stoneId)) return err(ALREADY_SHOWN);
      if (conclusionsOfStone(tx, found.stoneId).at(-1)?.id !== id) return err(NEWER);
      tx.orm.insert(secondReading).values({ id: newId(), conclusionId: id, personId: change.personId, outcome, at: change.at }).run();
      const stone = caseOf(tx, found.stoneId);
      appendAudit(tx, change, { subject: id, caseId: stone.case_id, content: { stone: stone.label, outcome } });
      return ok(found);
    }),
    confirm: (change, answer) => handle.transactResult<ConclusionView | null, ConfirmationRefusal>((tx) => {
      const found = conclusionById(tx, answer.conclusionId);
      if (found === null) return ok(null);
      const newest = conclusionsOfStone(tx, found.stoneId).at(-1);
      const stated = readingOf(tx, change.personId, found.id)?.outcome ?? null;
      const allowed = checkConfirmation({
        personId: change.personId, concludedById: found.byId, agrees: answer.agrees, reason: answer.reason, conclusion: found.conclusion, outcome: stated ?? answer.outcome,
        withheld: withheldAmong(tx, change.personId, [found.stoneId]).has(found.stoneId),
        superseded: newest?.id !== found.id, alreadyConfirmed: found.confirmation !== null,
      });
      if (!allowed.ok) return err(allowed.error);
      // Who agrees concludes the same.
      const outcome = stated ?? answer.outcome ?? (answer.agrees ? found.conclusion : null);
      const readFirst = stated !== null;
      tx.orm.insert(confirmation).values({ id: newId(), conclusionId: found.id, personId: change.personId, agrees: answer.agrees, reason: answer.reason, at: change.at, outcome, readFirst }).run();
      const stone = caseOf(tx, found.stoneId);
      appendAudit(tx, change, { subject: found.id, caseId: stone.case_id, content: { stone: stone.label, conclusion: found.conclusion, agrees: answer.agrees, reason: answer.reason, outcome, readFirst } });
      return ok(conclusionById(tx, found.id));
    }),
  };
}

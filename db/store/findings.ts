import type { FindingView } from '../../app/contract/work.ts';
import type { FindingFact } from '../../app/domain/finding.ts';
import type { Change } from '../change.ts';
import type { StoreHandle } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { findingById, findingsOfStone } from './findings-read.ts';
import { proposeFindings } from './findings-write.ts';

type PersonChange = Change & { readonly personId: string };

export type FindingsStore = {
  get(id: string): Promise<FindingView | null>;
  ofStone(stoneId: string): Promise<FindingView[]>;
  /** Accepts a finding or sets it aside. Null where it is not there or was replaced. */
  decide(change: PersonChange, decision: { findingId: string; accept: boolean; reason: string }): Promise<FindingView | null>;
  /** What an examiner saw beside the runs; it stands as accepted by its author. Null where there is no such stone. */
  add(change: PersonChange, stoneId: string, fact: FindingFact): Promise<FindingView | null>;
};

export function createFindingsStore(handle: StoreHandle, newId: () => string): FindingsStore {
  return {
    async get(id) { return findingById(handle.read, id); },
    async ofStone(stoneId) { return findingsOfStone(handle.read, stoneId); },
    decide: (change, { findingId, accept, reason }) => handle.transact((tx) => {
      const before = findingById(tx, findingId);
      if (before === null || before.state === 'replaced') return null;
      const state = accept ? 'accepted' : 'set-aside';
      tx.run('UPDATE finding SET state = @state, reason = @reason, decided_by = @by, decided_at = @at WHERE id = @findingId', { state, reason, by: change.personId, at: change.at, findingId });
      const row = tx.get<{ case_id: string }>('SELECT case_id FROM finding WHERE id = @findingId', { findingId });
      appendAudit(tx, change, {
        subject: findingId, caseId: row?.case_id ?? null,
        content: { finding: before.code, statement: before.statement, from: before.state, to: state, reason },
      });
      return findingById(tx, findingId);
    }),
    add: (change, stoneId, fact) => handle.transact((tx) => {
      const stone = tx.get<{ case_id: string; label: string }>('SELECT case_id, label FROM stone WHERE id = @stoneId', { stoneId });
      if (stone === undefined) return null;
      const [id] = proposeFindings(tx, newId, { at: change.at, caseId: stone.case_id, stoneId, runId: null, analysisId: null, origin: 'examiner' }, [fact], { state: 'accepted', by: change.personId });
      appendAudit(tx, change, {
        subject: id!, caseId: stone.case_id,
        content: { stone: stone.label, finding: fact.code, statement: fact.statement, strength: fact.strength, supports: fact.supports, method: fact.method, caution: fact.caution ?? '' },
      });
      return findingById(tx, id!);
    }),
  };
}

import { eq } from 'drizzle-orm';
import type { CaseRow, CaseView, IntakeInput } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { isDay } from '../../app/custody/calendar.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import { fold } from '../fold.ts';
import type { StoreHandle } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { caseRecord } from '../schema/index.ts';
import { CASE_ROW_COLUMNS, CASE_ROW_FROM, completeCaseRows, type CaseBase } from './case-rows.ts';
import { caseView } from './case-view.ts';
import { invalidFields, notFound } from './refusals.ts';
import { takeIn, type TakenIn } from './take-in.ts';

export type CaseFilter = { readonly text: string; readonly state: 'all' | 'open' | 'reported' | 'returned'; readonly limit: number; readonly offset: number };
export type CaseAmendment = { readonly caseId: string; readonly asks: string; readonly dueOn: string | null; readonly remarks: string };

export type CasesStore = {
  takeIn(change: Change & { readonly personId: string }, input: IntakeInput): Promise<Result<TakenIn, Failure>>;
  get(caseId: string): Promise<CaseView | null>;
  /** Newest first; text is looked for in number, client, what the client asks, remarks and declared descriptions, without regard to case and accents. */
  list(filter: CaseFilter): Promise<{ total: number; rows: CaseRow[] }>;
  amend(change: Change, input: CaseAmendment): Promise<Result<{ done: true }, Failure>>;
};

const TEXT = `(instr(fold(n.number || ' ' || k.name || ' ' || n.asks || ' ' || n.remarks), @text) > 0
  OR EXISTS (SELECT 1 FROM item i WHERE i.case_id = n.id AND instr(fold(i.declared), @text) > 0))`;

function conditions(filter: CaseFilter): { where: string; parameters: Record<string, string> } {
  const text = fold(filter.text.trim());
  const parts = [...(filter.state === 'all' ? [] : ['n.state = @state']), ...(text === '' ? [] : [TEXT])];
  return {
    where: parts.length > 0 ? `WHERE ${parts.join(' AND ')}` : '',
    parameters: { ...(filter.state !== 'all' && { state: filter.state }), ...(text !== '' && { text }) },
  };
}

const ORDER = 'ORDER BY n.received_at DESC, n.rowid DESC';

export function createCasesStore(handle: StoreHandle, newId: () => string): CasesStore {
  return {
    takeIn: (change, input) => handle.transactResult<TakenIn, Failure>((tx) => takeIn(tx, { newId }, change, input)),
    async get(caseId) { return caseView(handle.read, caseId); },
    async list(filter) {
      const { where, parameters } = conditions(filter);
      const matching = handle.read.all<{ n: number }>(`SELECT n.rowid AS n FROM ${CASE_ROW_FROM} ${where} ${ORDER}`, parameters);
      const page = JSON.stringify(matching.slice(filter.offset, filter.offset + filter.limit).map((row) => row.n));
      const bases = handle.read.all<CaseBase>(`SELECT ${CASE_ROW_COLUMNS} FROM ${CASE_ROW_FROM} WHERE n.rowid IN (SELECT value FROM json_each(@page)) ${ORDER}`, { page });
      return { total: matching.length, rows: completeCaseRows(handle.read, bases) };
    },
    amend: (change, input) => handle.transactResult<{ done: true }, Failure>((tx) => {
      const before = tx.orm.select().from(caseRecord).where(eq(caseRecord.id, input.caseId)).get();
      if (!before) return notFound('That case');
      if (input.dueOn !== null && !isDay(input.dueOn)) return invalidFields({ dueOn: 'There is no such day in the calendar.' });
      const after = { asks: input.asks, dueOn: input.dueOn, remarks: input.remarks };
      tx.orm.update(caseRecord).set(after).where(eq(caseRecord.id, before.id)).run();
      appendAudit(tx, change, { subject: before.number, caseId: before.id, content: { before: { asks: before.asks, dueOn: before.dueOn, remarks: before.remarks }, after } });
      return ok({ done: true });
    }),
  };
}

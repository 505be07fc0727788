import { eq } from 'drizzle-orm';
import type { CaseRow, CaseView, IntakeInput } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { CaseSort, SortedBy } from '../../app/contract/list-page.ts';
import { isDay } from '../../app/custody/calendar.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import { fold } from '../fold.ts';
import type { ReadDb, StoreHandle } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { inSlices } from '../lists/in-slices.ts';
import { createListOrders, inOrder, type ListOrders } from '../lists/list-orders.ts';
import { sortRows, type SortKey } from '../lists/sort-rows.ts';
import { CASES_NEWEST_FIRST } from '../lists/stones-in-order.ts';
import { caseRecord } from '../schema/index.ts';
import { CASE_ROW_COLUMNS, CASE_ROW_FROM, completeCaseRows, type CaseBase } from './case-rows.ts';
import { caseView } from './case-view.ts';
import { invalidFields, notFound } from './refusals.ts';
import { takeIn, type TakenIn } from './take-in.ts';

export type CaseFilter = { readonly text: string; readonly state: 'all' | 'open' | 'reported' | 'returned'; readonly limit: number; readonly offset: number; readonly sort?: SortedBy<CaseSort> };
export type CaseAmendment = { readonly caseId: string; readonly asks: string; readonly dueOn: string | null; readonly remarks: string };

export type CasesStore = {
  takeIn(change: Change & { readonly personId: string }, input: IntakeInput): Promise<Result<TakenIn, Failure>>;
  get(caseId: string): Promise<CaseView | null>;
  /** Newest first unless sorted otherwise; text is looked for in number, client, what the client asks, remarks and declared descriptions, without regard to case and accents. */
  list(filter: CaseFilter): Promise<{ total: number; rows: CaseRow[] }>;
  amend(change: Change, input: CaseAmendment): Promise<Result<{ done: true }, Failure>>;
};

const TEXT = `(instr(fold(n.number || ' ' || k.name || ' ' || n.asks || ' ' || n.remarks), @text) > 0
  OR EXISTS (SELECT 1 FROM item i WHERE i.case_id = n.id AND instr(fold(i.declared), @text) > 0))`;

/** The order in which cases are shown, walked on an index; those of one state on another. */
async function casesInOrder(db: ReadDb, state: CaseFilter['state'], text: string): Promise<number[]> {
  const all = db.all<{ n: number }>(state === 'all' ? CASES_NEWEST_FIRST : `SELECT rowid AS n FROM case_record WHERE state = @state ORDER BY received_at DESC, rowid DESC`, state === 'all' ? {} : { state }).map(({ n }) => n);
  if (text === '') return all;
  return inSlices(all, (some) => {
    const fit = new Set(db.all<{ n: number }>(`SELECT n.rowid AS n FROM ${CASE_ROW_FROM} WHERE n.rowid IN (SELECT value FROM json_each(@rows)) AND ${TEXT}`, { text, rows: JSON.stringify(some) }).map(({ n }) => n));
    return some.filter((n) => fit.has(n));
  });
}

const rowsOf = (db: ReadDb, rows: readonly number[]): CaseRow[] =>
  completeCaseRows(db, inOrder(rows, db.all<CaseBase & { n: number }>(`SELECT n.rowid AS n, ${CASE_ROW_COLUMNS} FROM ${CASE_ROW_FROM} WHERE n.rowid IN (SELECT value FROM json_each(@rows))`, { rows: JSON.stringify(rows) })));

const SORTS: Readonly<Record<CaseSort, (row: CaseRow) => SortKey>> = {
  number: (row) => row.number, client: (row) => row.clientName, next: (row) => row.next, stones: (row) => (row.stones === 0 ? 1 : row.confirmed / row.stones),
  received: (row) => row.receivedAt, due: (row) => row.dueOn ?? '9999', place: (row) => row.place,
};

async function list(db: ReadDb, orders: ListOrders, filter: CaseFilter): Promise<{ total: number; rows: CaseRow[] }> {
  const { state, offset, limit, sort = null } = filter;
  const text = fold(filter.text.trim());
  const plain = await orders.of({ list: 'cases', state, text }, () => casesInOrder(db, state, text));
  const order = sort === null ? plain : await orders.of({ list: 'cases', state, text, sort }, async () =>
    sortRows(plain, await inSlices(plain, (some) => rowsOf(db, some).map((row) => [SORTS[sort.key](row)])), sort.down));
  return { total: order.length, rows: rowsOf(db, order.slice(offset, offset + limit)) };
}

export function createCasesStore(handle: StoreHandle, newId: () => string): CasesStore {
  const orders = createListOrders(handle.read);
  return {
    takeIn: (change, input) => handle.transactResult<TakenIn, Failure>((tx) => takeIn(tx, { newId }, change, input)),
    async get(caseId) { return caseView(handle.read, caseId); },
    list: (filter) => list(handle.read, orders, filter),
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

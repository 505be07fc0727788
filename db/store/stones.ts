import { eq } from 'drizzle-orm';
import type { StoneSummary } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { SortedBy, StoneSort } from '../../app/contract/list-page.ts';
import { MOUNTED_WEIGHT } from '../../app/custody/check-intake.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import { fold } from '../fold.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { createListOrders, inOrder, type ListOrders } from '../lists/list-orders.ts';
import { sortStones, type Viewer } from '../lists/stone-sorts.ts';
import { stonesInOrder, type Wanted } from '../lists/stones-in-order.ts';
import { item, stone } from '../schema/index.ts';
import { insertStone, type StoneFacts } from './insert-stone.ts';
import { theLaboratory } from './laboratory.ts';
import { invalidFields, notFound, refused } from './refusals.ts';
import { withheldSince } from './second-readings.ts';
import { STONE_SUMMARY_COLUMNS, STONE_SUMMARY_JOINS, stoneSummary, summaryOf, type StoneSummaryRow } from './stone-summaries.ts';

export type StoneRow = StoneSummary & { readonly caseId: string; readonly caseNumber: string; readonly clientName: string; readonly declared: string };
export type ListPage = { readonly text: string; readonly limit: number; readonly offset: number; readonly sort?: SortedBy<StoneSort> };

export type StonesStore = {
  /** Newest cases first unless sorted otherwise, as far as the viewer may know; text is looked for in label, shape, case number, client and the item's declared description. */
  list(page: ListPage, viewer?: string | null): Promise<{ total: number; rows: StoneRow[] }>;
  get(stoneId: string): Promise<StoneSummary | null>;
  add(change: Change, input: StoneFacts & { readonly itemId: string; readonly mounted: boolean }): Promise<Result<StoneSummary, Failure>>;
  amend(change: Change, input: StoneFacts & { readonly stoneId: string }): Promise<Result<StoneSummary, Failure>>;
};

const JOINS = 'JOIN item i ON i.id = s.item_id JOIN client k ON k.id = n.client_id';
/** The stones of a case as they lie on the bench. */
const WITHIN = 'i.rowid, s.ordinal';
const SEARCHED = `fold(n.number || ' ' || s.label || ' ' || s.shape || ' ' || k.name || ' ' || i.declared)`;
const ROWS = `SELECT s.rowid AS n, ${STONE_SUMMARY_COLUMNS}, s.case_id, n.number, k.name, i.declared FROM stone s JOIN case_record n ON n.id = s.case_id ${JOINS} ${STONE_SUMMARY_JOINS} WHERE s.rowid IN (SELECT value FROM json_each(@page))`;

type ListedRow = StoneSummaryRow & { n: number; case_id: string; number: string; name: string; declared: string };

const listedOf = (row: ListedRow): StoneRow => ({ ...summaryOf(row), caseId: row.case_id, caseNumber: row.number, clientName: row.name, declared: row.declared });

/** The order is made once; summaries only for the page. */
async function list(db: ReadDb, orders: ListOrders, { text, sort = null, limit, offset }: ListPage, viewer: string | null): Promise<{ total: number; rows: StoneRow[] }> {
  const folded = fold(text.trim());
  const wanted: Wanted = { joins: JOINS, within: WITHIN, among: null, where: folded === '' ? '' : `instr(${SEARCHED}, @text) > 0`, parameters: folded === '' ? {} : { text: folded } };
  const plain = await orders.of({ list: 'stones', text: folded }, () => stonesInOrder(db, wanted));
  const by: Viewer = { viewer, since: withheldSince(theLaboratory(db).settings) };
  const order = sort === null ? plain : await orders.of({ list: 'stones', text: folded, sort, ...by }, () => sortStones(db, plain, sort, by));
  const page = order.slice(offset, offset + limit);
  return { total: order.length, rows: inOrder(page, db.all<ListedRow>(ROWS, { page: JSON.stringify(page) })).map(listedOf) };
}

function whyNot(itemRow: typeof item.$inferSelect, held: number, input: StoneFacts & { readonly mounted: boolean }): Record<string, string> {
  const fields: Record<string, string> = {};
  if (input.mounted && itemRow.kind !== 'jewellery') fields['mounted'] = 'Only a stone of a piece of jewellery is mounted.';
  if (input.mounted && input.weight !== null) fields['weight'] = MOUNTED_WEIGHT;
  if (itemRow.kind === 'loose' && held >= 1) fields['itemId'] = `${itemRow.label} is a loose stone and is listed already.`;
  if (itemRow.kind === 'lot' && itemRow.count !== null && held >= itemRow.count) fields['itemId'] = `The lot ${itemRow.label} holds ${itemRow.count} stones, and all are listed.`;
  return fields;
}

/** What was returned is not changed any more. */
export function caseIsClosed(tx: WriteTx, caseId: string): boolean {
  return tx.get<{ state: string }>('SELECT state FROM case_record WHERE id = ?', [caseId])?.state === 'returned';
}

export const closed = () => refused('This case was returned to the client.', 'What was recorded stays as it is; if the stones come back, take them in as a new case.');

const factsOf = ({ position, shape, measurements, colourClass, weight }: StoneFacts) => ({ position, shape, measurements, colourClass, weight });

export function createStonesStore(handle: StoreHandle, newId: () => string): StonesStore {
  const orders = createListOrders(handle.read);
  return {
    list: (page, viewer = null) => list(handle.read, orders, page, viewer),
    async get(stoneId) { return stoneSummary(handle.read, stoneId); },
    add: (change, input) => handle.transactResult<StoneSummary, Failure>((tx) => {
      const itemRow = tx.orm.select().from(item).where(eq(item.id, input.itemId)).get();
      if (!itemRow) return notFound('That item');
      if (caseIsClosed(tx, itemRow.caseId)) return closed();
      const held = tx.get<{ n: number }>('SELECT count(*) AS n FROM stone WHERE item_id = ?', [itemRow.id])!.n;
      const fields = whyNot(itemRow, held, input);
      if (Object.keys(fields).length > 0) return invalidFields(fields);
      const made = insertStone(tx, newId(), { caseId: itemRow.caseId, itemId: itemRow.id, itemLabel: itemRow.label }, input);
      appendAudit(tx, change, { subject: made.id, caseId: itemRow.caseId, content: { stone: { label: made.label, mounted: input.mounted, ...factsOf(input) } } });
      return ok(stoneSummary(tx, made.id)!);
    }),
    amend: (change, input) => handle.transactResult<StoneSummary, Failure>((tx) => {
      const before = tx.orm.select().from(stone).where(eq(stone.id, input.stoneId)).get();
      if (!before) return notFound('That stone');
      if (caseIsClosed(tx, before.caseId)) return closed();
      if (before.mounted && input.weight !== null) return invalidFields({ weight: MOUNTED_WEIGHT });
      tx.orm.update(stone).set(factsOf(input)).where(eq(stone.id, before.id)).run();
      appendAudit(tx, change, {
        subject: before.id, caseId: before.caseId,
        content: { stone: before.label, before: { ...factsOf({ ...before, colourClass: before.colourClass as StoneFacts['colourClass'] }) }, after: factsOf(input) },
      });
      return ok(stoneSummary(tx, before.id)!);
    }),
  };
}

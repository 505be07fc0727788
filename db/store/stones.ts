import { eq } from 'drizzle-orm';
import type { StoneSummary } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { MOUNTED_WEIGHT } from '../../app/custody/check-intake.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import { fold } from '../fold.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { item, stone } from '../schema/index.ts';
import { insertStone, type StoneFacts } from './insert-stone.ts';
import { invalidFields, notFound, refused } from './refusals.ts';
import { STONE_SUMMARY_COLUMNS, STONE_SUMMARY_JOINS, stoneSummary, summaryOf, type StoneSummaryRow } from './stone-summaries.ts';

export type StoneRow = StoneSummary & { readonly caseId: string; readonly caseNumber: string; readonly clientName: string; readonly declared: string };
export type ListPage = { readonly text: string; readonly limit: number; readonly offset: number };

export type StonesStore = {
  /** Newest cases first; text is looked for in label, shape, case number, client and the item's declared description. */
  list(page: ListPage): Promise<{ total: number; rows: StoneRow[] }>;
  get(stoneId: string): Promise<StoneSummary | null>;
  add(change: Change, input: StoneFacts & { readonly itemId: string; readonly mounted: boolean }): Promise<Result<StoneSummary, Failure>>;
  amend(change: Change, input: StoneFacts & { readonly stoneId: string }): Promise<Result<StoneSummary, Failure>>;
};

const FROM = 'stone s JOIN item i ON i.id = s.item_id JOIN case_record n ON n.id = s.case_id JOIN client k ON k.id = n.client_id';
const ORDER = 'ORDER BY n.received_at DESC, n.rowid DESC, i.rowid, s.ordinal';
const SEARCHED = `fold(n.number || ' ' || s.label || ' ' || s.shape || ' ' || k.name || ' ' || i.declared)`;
const ROWS = `SELECT ${STONE_SUMMARY_COLUMNS}, s.case_id, n.number, k.name, i.declared FROM ${FROM} ${STONE_SUMMARY_JOINS}`;

type ListedRow = StoneSummaryRow & { case_id: string; number: string; name: string; declared: string };

const listedOf = (row: ListedRow): StoneRow => ({ ...summaryOf(row), caseId: row.case_id, caseNumber: row.number, clientName: row.name, declared: row.declared });

/** With words the whole table is read once, for the row numbers that match; summaries are made only for the page. */
function list(db: ReadDb, { text, limit, offset }: ListPage): { total: number; rows: StoneRow[] } {
  const folded = fold(text.trim());
  if (folded === '') {
    const total = db.get<{ n: number }>('SELECT count(*) AS n FROM stone')!.n;
    return { total, rows: db.all<ListedRow>(`${ROWS} ${ORDER} LIMIT @limit OFFSET @offset`, { limit, offset }).map(listedOf) };
  }
  const matching = db.all<{ n: number }>(`SELECT s.rowid AS n FROM ${FROM} WHERE instr(${SEARCHED}, @text) > 0 ${ORDER}`, { text: folded });
  const page = JSON.stringify(matching.slice(offset, offset + limit).map((row) => row.n));
  return { total: matching.length, rows: db.all<ListedRow>(`${ROWS} WHERE s.rowid IN (SELECT value FROM json_each(@page)) ${ORDER}`, { page }).map(listedOf) };
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
  return {
    async list(page) { return list(handle.read, page); },
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

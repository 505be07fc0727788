import { eq } from 'drizzle-orm';
import type { StoneSummary } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { MOUNTED_WEIGHT } from '../../app/custody/check-intake.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import { fold } from '../fold.ts';
import type { StoreHandle, WriteTx } from '../handle.ts';
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

const MATCHES = `(@text = '' OR instr(fold(n.number || ' ' || s.label || ' ' || s.shape || ' ' || k.name || ' ' || i.declared), @text) > 0)`;
const FROM = `stone s JOIN item i ON i.id = s.item_id JOIN case_record n ON n.id = s.case_id JOIN client k ON k.id = n.client_id`;

function whyNot(itemRow: typeof item.$inferSelect, held: number, input: StoneFacts & { readonly mounted: boolean }): Record<string, string> {
  const fields: Record<string, string> = {};
  if (input.mounted && itemRow.kind !== 'jewellery') fields['mounted'] = 'Only a stone of a piece of jewellery is mounted.';
  if (input.mounted && input.weight !== null) fields['weight'] = MOUNTED_WEIGHT;
  if (itemRow.kind === 'loose' && held >= 1) fields['itemId'] = `${itemRow.label} is a loose stone and is listed already.`;
  if (itemRow.kind === 'lot' && itemRow.count !== null && held >= itemRow.count) fields['itemId'] = `The lot ${itemRow.label} holds ${itemRow.count} stones, and all are listed.`;
  return fields;
}

function caseIsClosed(tx: WriteTx, caseId: string): boolean {
  return tx.get<{ state: string }>('SELECT state FROM case_record WHERE id = ?', [caseId])?.state === 'returned';
}

const closed = () => refused('This case was returned to the client.', 'What was recorded stays as it is; if the stones come back, take them in as a new case.');

const factsOf = ({ position, shape, measurements, colourClass, weight }: StoneFacts) => ({ position, shape, measurements, colourClass, weight });

export function createStonesStore(handle: StoreHandle, newId: () => string): StonesStore {
  return {
    async list({ text, limit, offset }) {
      const folded = fold(text.trim());
      const total = folded === ''
        ? handle.read.get<{ n: number }>('SELECT count(*) AS n FROM stone')!.n
        : handle.read.get<{ n: number }>(`SELECT count(*) AS n FROM ${FROM} WHERE ${MATCHES}`, { text: folded })!.n;
      const rows = handle.read.all<StoneSummaryRow & { case_id: string; number: string; name: string; declared: string }>(
        `SELECT ${STONE_SUMMARY_COLUMNS}, s.case_id, n.number, k.name, i.declared FROM ${FROM} ${STONE_SUMMARY_JOINS}
         WHERE ${MATCHES} ORDER BY n.received_at DESC, n.rowid DESC, i.rowid, s.ordinal LIMIT @limit OFFSET @offset`, { text: folded, limit, offset });
      return { total, rows: rows.map((row) => ({ ...summaryOf(row), caseId: row.case_id, caseNumber: row.number, clientName: row.name, declared: row.declared })) };
    },
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

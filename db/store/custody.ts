import { eq } from 'drizzle-orm';
import type { CustodyView } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { currentCustody, type CurrentCustody } from '../../app/custody/current-custody.ts';
import { nextCustody, type CustodyRequest } from '../../app/custody/next-custody.ts';
import { custodyContent } from '../../app/domain/custody-event.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { appendCustody } from '../ledger/append-custody.ts';
import { item } from '../schema/index.ts';
import { theLaboratory } from './laboratory.ts';
import { invalidFields, notFound } from './refusals.ts';

export type CustodyStore = {
  /** Newest first; of one case or one item, or of the whole house. */
  list(filter: { readonly caseId: string | null; readonly itemId: string | null; readonly limit: number; readonly offset: number }): Promise<{ total: number; rows: CustodyView[] }>;
  append(change: Change, input: CustodyRequest & { readonly itemId: string }): Promise<Result<CustodyView, Failure>>;
};

type Row = {
  seq: number; at: string; case_id: string; case_number: string; item_id: string; item_label: string; person: string; content: string; previous: string; hash: string;
};

const VIEW = `SELECT e.seq, e.at, e.case_id, n.number AS case_number, e.item_id, i.label AS item_label, p.name AS person, e.content, e.previous, e.hash
  FROM custody_entry e JOIN item i ON i.id = e.item_id JOIN case_record n ON n.id = e.case_id JOIN person p ON p.id = e.person_id`;

const viewOf = (row: Row): CustodyView => ({
  seq: row.seq, at: row.at, caseId: row.case_id, caseNumber: row.case_number, itemId: row.item_id, itemLabel: row.item_label, person: row.person,
  content: custodyContent.parse(JSON.parse(row.content)), previous: row.previous, hash: row.hash,
});

function viewBySeq(db: ReadDb | WriteTx, seq: number): CustodyView {
  return viewOf(db.get<Row>(`${VIEW} WHERE e.seq = ?`, [seq])!);
}

type EntryRow = { item_id: string; at: string; content: string };

const entryOf = (row: EntryRow) => ({ at: row.at, content: custodyContent.parse(JSON.parse(row.content)) });

/** Where one item is now, or null while nothing is recorded of it. */
export function custodyOfItem(db: ReadDb | WriteTx, itemId: string): CurrentCustody | null {
  return currentCustody(db.all<EntryRow>('SELECT item_id, at, content FROM custody_entry WHERE item_id = ? ORDER BY seq', [itemId]).map(entryOf));
}

/** Where each item of a case is now. */
export function custodyOfCase(db: ReadDb | WriteTx, caseId: string): Map<string, CurrentCustody> {
  const rows = db.all<EntryRow>('SELECT item_id, at, content FROM custody_entry WHERE case_id = ? ORDER BY seq', [caseId]);
  const entries = new Map<string, ReturnType<typeof entryOf>[]>();
  for (const row of rows) {
    const known = entries.get(row.item_id);
    if (known) known.push(entryOf(row));
    else entries.set(row.item_id, [entryOf(row)]);
  }
  return new Map([...entries].map(([itemId, ofItem]) => [itemId, currentCustody(ofItem)!]));
}

/** A case whose every item has gone back is closed. */
function closeWhenAllReturned(tx: WriteTx, caseId: string): void {
  tx.run(`UPDATE case_record SET state = 'returned' WHERE id = @caseId AND NOT EXISTS (
    SELECT 1 FROM item i WHERE i.case_id = @caseId AND NOT EXISTS (
      SELECT 1 FROM custody_entry e WHERE e.item_id = i.id AND json_extract(e.content, '$.event') = 'returned'))`, { caseId });
}

function append(tx: WriteTx, change: Change, input: CustodyRequest & { readonly itemId: string }): Result<CustodyView, Failure> {
  const row = tx.orm.select().from(item).where(eq(item.id, input.itemId)).get();
  const current = row ? custodyOfItem(tx, row.id) : null;
  if (!row || !current) return notFound('That item');
  const { settings } = theLaboratory(tx);
  const weightUnit = row.weightUnit === 'g' ? 'g' : 'ct';
  const content = nextCustody(input, {
    label: row.label, current, weightUnit,
    tolerance: weightUnit === 'g' ? settings.weightToleranceGram : settings.weightToleranceCarat,
    clientName: tx.get<{ name: string }>('SELECT k.name FROM client k JOIN case_record n ON n.client_id = k.id WHERE n.id = ?', [row.caseId])!.name,
  });
  if (!content.ok) {
    return content.error.code === 'incomplete' ? invalidFields(content.error.fields) : err({ code: 'refused', message: content.error.message, next: content.error.next });
  }
  const head = appendCustody(tx, change, { caseId: row.caseId, itemId: row.id, content: content.value });
  if (content.value.event === 'returned') closeWhenAllReturned(tx, row.caseId);
  appendAudit(tx, change, { subject: row.id, caseId: row.caseId, content: { custody: { seq: head.seq, hash: head.hash }, event: content.value.event, item: row.label } });
  return ok(viewBySeq(tx, head.seq));
}

export function createCustodyStore(handle: StoreHandle): CustodyStore {
  return {
    async list({ caseId, itemId, limit, offset }) {
      const where = [...(caseId === null ? [] : ['e.case_id = @caseId']), ...(itemId === null ? [] : ['e.item_id = @itemId'])].join(' AND ') || '1';
      const filter = { ...(caseId !== null && { caseId }), ...(itemId !== null && { itemId }) };
      const total = handle.read.get<{ n: number }>(`SELECT count(*) AS n FROM custody_entry e WHERE ${where}`, filter)!.n;
      const rows = handle.read.all<Row>(`${VIEW} WHERE ${where} ORDER BY e.seq DESC LIMIT @limit OFFSET @offset`, { ...filter, limit, offset });
      return { total, rows: rows.map(viewOf) };
    },
    append: (change, input) => handle.transactResult<CustodyView, Failure>((tx) => append(tx, change, input)),
  };
}

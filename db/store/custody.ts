import { eq } from 'drizzle-orm';
import type { CustodyView } from '../../app/contract/custody.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { Output } from '../../app/contract/index.ts';
import { dayInZone } from '../../app/custody/calendar.ts';
import { checkPicture, pictureKind } from '../../app/custody/check-picture.ts';
import { nextCustody, type CustodyRefusal, type CustodyRequest } from '../../app/custody/next-custody.ts';
import { custodyContent } from '../../app/domain/custody-event.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { appendCustody } from '../ledger/append-custody.ts';
import { item } from '../schema/index.ts';
import { custodyOfItem } from './custody-now.ts';
import { insertPhotograph, type PhotographInput } from './insert-photograph.ts';
import { theLaboratory } from './laboratory.ts';
import { personById } from './people.ts';
import { invalidFields, notFound } from './refusals.ts';
import { whereaboutsAt } from './whereabouts.ts';

export type CustodyFilter = { readonly caseId: string | null; readonly itemId: string | null; readonly limit: number; readonly offset: number };

export type CustodyStore = {
  /** Newest first; of one case or one item, or of the whole house. */
  list(filter: CustodyFilter): Promise<{ total: number; rows: CustodyView[] }>;
  append(change: Change, input: CustodyRequest & { readonly itemId: string; readonly photographs?: readonly PhotographInput[] | undefined }): Promise<Result<CustodyView, Failure>>;
  /** The same entry for several items; all or none. */
  appendMany(change: Change, input: CustodyRequest & { readonly itemIds: readonly string[] }): Promise<Result<CustodyView[], Failure>>;
  /** Entries by their numbers, in the ledger's order; null where one is unknown. */
  bySeq(seqs: readonly number[]): Promise<CustodyView[] | null>;
  /** Every item that has not gone back to its client, as things stand at `at` (UTC ISO 8601). */
  whereabouts(at: string): Promise<Output<'custody.whereabouts'>>;
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

/** A case whose every item has gone back is closed. */
function closeWhenAllReturned(tx: WriteTx, caseId: string): void {
  tx.run(`UPDATE case_record SET state = 'returned' WHERE id = @caseId AND NOT EXISTS (
    SELECT 1 FROM item i WHERE i.case_id = @caseId AND NOT EXISTS (
      SELECT 1 FROM custody_entry e WHERE e.item_id = i.id AND json_extract(e.content, '$.event') = 'returned'))`, { caseId });
}

type Appended = { readonly seq: number; readonly label: string };

function entryRefused(error: CustodyRefusal): Result<never, Failure> {
  return error.code === 'incomplete' ? invalidFields(error.fields) : err({ code: 'refused', message: error.message, next: error.next });
}

function append(tx: WriteTx, deps: { newId(): string }, change: Change, input: CustodyRequest & { readonly itemId: string }, photographs: readonly PhotographInput[]): Result<Appended, Failure> {
  const row = tx.orm.select().from(item).where(eq(item.id, input.itemId)).get();
  const current = row ? custodyOfItem(tx, row.id) : null;
  if (!row || !current) return notFound('That item');
  const { settings, zone } = theLaboratory(tx);
  const weightUnit = row.weightUnit === 'g' ? 'g' : 'ct';
  const next = nextCustody(input, {
    label: row.label, current, weightUnit,
    tolerance: weightUnit === 'g' ? settings.weightToleranceGram : settings.weightToleranceCarat,
    clientName: tx.get<{ name: string }>('SELECT k.name FROM client k JOIN case_record n ON n.client_id = k.id WHERE n.id = ?', [row.caseId])!.name,
    person: personById(tx, change.personId ?? '')?.name ?? '', today: dayInZone(change.at, zone),
  });
  if (!next.ok) return entryRefused(next.error);
  const faults = photographs.map((one) => checkPicture(one.bytes, pictureKind(one.mediaType))).filter((fault) => fault !== null);
  if (faults[0] !== undefined) return invalidFields({ photographs: faults[0] });
  const digests = photographs.map((one) => insertPhotograph(tx, deps, change, { caseId: row.caseId, itemId: row.id, stoneId: null }, one).sha256);
  const content = { ...next.value, ...(digests.length > 0 && { photographs: digests }) };
  const head = appendCustody(tx, change, { caseId: row.caseId, itemId: row.id, content });
  if (content.event === 'returned') closeWhenAllReturned(tx, row.caseId);
  appendAudit(tx, change, { subject: row.id, caseId: row.caseId, content: { custody: { seq: head.seq, hash: head.hash }, event: content.event, item: row.label, ...(digests.length > 0 && { photographs: digests }) } });
  return ok({ seq: head.seq, label: row.label });
}

/** The first refusal stops all: a half-written hand-over would say that some things changed hands and others did not. */
function appendMany(tx: WriteTx, deps: { newId(): string }, change: Change, itemIds: readonly string[], request: CustodyRequest): Result<CustodyView[], Failure> {
  const written: CustodyView[] = [];
  for (const itemId of new Set(itemIds)) {
    const one = append(tx, deps, change, { ...request, itemId }, []);
    if (!one.ok) return one;
    written.push(viewBySeq(tx, one.value.seq));
  }
  return ok(written);
}

/** Entries of one case, of one item, or of the whole house, newest first. */
export function listCustody(db: ReadDb, { caseId, itemId, limit, offset }: CustodyFilter): { total: number; rows: CustodyView[] } {
  const where = [...(caseId === null ? [] : ['e.case_id = @caseId']), ...(itemId === null ? [] : ['e.item_id = @itemId'])].join(' AND ') || '1';
  const filter = { ...(caseId !== null && { caseId }), ...(itemId !== null && { itemId }) };
  // Numbers have no gaps: of the whole ledger, the last one is the count, and a million entries are not counted.
  const total = db.get<{ n: number }>(`SELECT ${where === '1' ? 'coalesce(max(e.seq), 0)' : 'count(*)'} AS n FROM custody_entry e WHERE ${where}`, filter)!.n;
  const rows = db.all<Row>(`${VIEW} WHERE ${where} ORDER BY e.seq DESC LIMIT @limit OFFSET @offset`, { ...filter, limit, offset });
  return { total, rows: rows.map(viewOf) };
}

export function createCustodyStore(handle: StoreHandle, newId: () => string): CustodyStore {
  return {
    list: async (filter) => listCustody(handle.read, filter),
    append: (change, { photographs, ...input }) => handle.transactResult<CustodyView, Failure>((tx) => {
      const one = append(tx, { newId }, change, input, photographs ?? []);
      return one.ok ? ok(viewBySeq(tx, one.value.seq)) : one;
    }),
    appendMany: (change, { itemIds, ...request }) => handle.transactResult<CustodyView[], Failure>((tx) => appendMany(tx, { newId }, change, itemIds, request)),
    async bySeq(seqs) {
      const kept = [...new Set(seqs)].sort((a, b) => a - b).map((seq) => handle.read.get<Row>(`${VIEW} WHERE e.seq = ?`, [seq]));
      return kept.every((row) => row !== undefined) ? kept.map(viewOf) : null;
    },
    whereabouts: async (at) => whereaboutsAt(handle.read, at),
  };
}

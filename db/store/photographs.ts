import type { PhotographView } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { checkPicture, pictureKind } from '../../app/custody/check-picture.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { appendCustody } from '../ledger/append-custody.ts';
import { custodyOfItem } from './custody-now.ts';
import { insertPhotograph, type PhotographInput, type PhotographPlace } from './insert-photograph.ts';
import { readRawRecord, type RawContent } from './put-raw-record.ts';
import { invalidFields, notFound, refused } from './refusals.ts';

export type PhotographsStore = {
  add(change: Change, input: PhotographInput & PhotographPlace): Promise<Result<PhotographView, Failure>>;
  /** The picture's bytes; refuses where they no longer have their digest. */
  content(photographId: string): Promise<Result<RawContent, Failure>>;
};

type Row = {
  id: string; item_id: string | null; stone_id: string | null; caption: string; light: string; at: string; name: string; media_type: string; size: number; sha256: string;
};

const VIEW = `SELECT p.id, p.item_id, p.stone_id, p.caption, p.light, p.at, r.name, r.media_type, r.size, r.sha256
  FROM photograph p JOIN raw_record r ON r.id = p.raw_record_id`;

const viewOf = (row: Row): PhotographView => ({
  id: row.id, itemId: row.item_id, stoneId: row.stone_id, caption: row.caption, light: row.light as PhotographView['light'], at: row.at,
  name: row.name, mediaType: row.media_type, size: row.size, sha256: row.sha256,
});

/** Photographs of a case with those of its items and stones, in the order they were taken in. */
export function photographsOfCase(db: ReadDb | WriteTx, caseId: string): PhotographView[] {
  return db.all<Row>(`${VIEW} WHERE p.case_id = ? ORDER BY p.rowid`, [caseId]).map(viewOf);
}

/** The item a picture shows: the one named, or the one its stone belongs to. */
function itemShown(tx: WriteTx, input: PhotographPlace): Result<string | null, Failure> {
  if (!tx.get('SELECT 1 FROM case_record WHERE id = ?', [input.caseId])) return notFound('That case');
  const stone = input.stoneId === null ? null
    : tx.get<{ item_id: string }>('SELECT item_id FROM stone WHERE id = ? AND case_id = ?', [input.stoneId, input.caseId]) ?? undefined;
  if (stone === undefined) return notFound('That stone');
  const itemId = input.itemId ?? stone?.item_id ?? null;
  if (itemId === null) return ok(null);
  if (stone && stone.item_id !== itemId) return refused('That stone belongs to another item.', 'Choose the item the stone belongs to, or the stone alone.');
  return tx.get('SELECT 1 FROM item WHERE id = ? AND case_id = ?', [itemId, input.caseId]) ? ok(itemId) : notFound('That item');
}

export function createPhotographsStore(handle: StoreHandle, newId: () => string): PhotographsStore {
  return {
    add: (change, input) => handle.transactResult<PhotographView, Failure>((tx) => {
      const shown = itemShown(tx, input);
      if (!shown.ok) return shown;
      const fault = checkPicture(input.bytes, pictureKind(input.mediaType));
      if (fault !== null) return invalidFields({ bytes: fault });
      if (shown.value !== null && custodyOfItem(tx, shown.value)?.returned === true) {
        return refused('That item was returned to the client.', 'A photograph of it can be added to the case as a whole, without naming the item.');
      }
      const place = { caseId: input.caseId, itemId: shown.value, stoneId: input.stoneId };
      const made = insertPhotograph(tx, { newId }, change, place, input);
      const custody = shown.value === null ? null
        : appendCustody(tx, change, { caseId: input.caseId, itemId: shown.value, content: { event: 'photographed', ...(input.caption !== '' && { note: input.caption }) } });
      appendAudit(tx, change, {
        subject: made.id, caseId: input.caseId,
        content: { photograph: { item: shown.value, stone: input.stoneId, caption: input.caption, light: input.light, sha256: made.sha256 }, ...(custody !== null && { custody }) },
      });
      return ok(viewOf(tx.get<Row>(`${VIEW} WHERE p.id = ?`, [made.id])!));
    }),
    async content(photographId) {
      const row = handle.read.get<{ raw_record_id: string }>('SELECT raw_record_id FROM photograph WHERE id = ?', [photographId]);
      return row ? readRawRecord(handle.read, row.raw_record_id) : notFound('That photograph');
    },
  };
}

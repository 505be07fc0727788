import { currentCustody, type CurrentCustody } from '../../app/custody/current-custody.ts';
import { custodyContent } from '../../app/domain/custody-event.ts';
import type { ReadDb, WriteTx } from '../handle.ts';

type EntryRow = { item_id: string; at: string; content: string };

const entryOf = (row: EntryRow) => ({ at: row.at, content: custodyContent.parse(JSON.parse(row.content)) });

/** Where one item is now, or null while nothing is recorded of it. */
export function custodyOfItem(db: ReadDb | WriteTx, itemId: string): CurrentCustody | null {
  return currentCustody(db.all<EntryRow>('SELECT item_id, at, content FROM custody_entry WHERE item_id = ? ORDER BY seq', [itemId]).map(entryOf));
}

/** Folds entries of several items, in the ledger's order. */
function byItem(rows: readonly EntryRow[]): Map<string, CurrentCustody> {
  const entries = new Map<string, ReturnType<typeof entryOf>[]>();
  for (const row of rows) {
    const known = entries.get(row.item_id);
    if (known) known.push(entryOf(row));
    else entries.set(row.item_id, [entryOf(row)]);
  }
  return new Map([...entries].map(([itemId, ofItem]) => [itemId, currentCustody(ofItem)!]));
}

/** Where each item of some cases is now. */
export const custodyOfCases = (db: ReadDb | WriteTx, caseIds: readonly string[]): Map<string, CurrentCustody> =>
  byItem(db.all<EntryRow>('SELECT item_id, at, content FROM custody_entry WHERE case_id IN (SELECT value FROM json_each(@ids)) ORDER BY seq', { ids: JSON.stringify(caseIds) }));

/** Where each item of a case is now. */
export const custodyOfCase = (db: ReadDb | WriteTx, caseId: string): Map<string, CurrentCustody> => custodyOfCases(db, [caseId]);

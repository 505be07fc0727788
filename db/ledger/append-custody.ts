import { canonicalJson } from '../../app/custody/canonical-json.ts';
import { entryHash, GENESIS } from '../../app/custody/chain.ts';
import type { CustodyContent } from '../../app/domain/custody-event.ts';
import type { Change } from '../change.ts';
import type { WriteTx } from '../handle.ts';
import { custodyEntry } from '../schema/index.ts';
import { writeSearch } from '../search/write-search.ts';
import { ledgerHead, type LedgerHead } from './ledger-head.ts';

/**
 * Writes one entry of the custody ledger inside the caller's transaction and returns its number and digest.
 * Throws where the change has no person: custody always passes through someone's hands.
 */
export function appendCustody(tx: WriteTx, change: Change, entry: { caseId: string; itemId: string; content: CustodyContent }): LedgerHead {
  if (change.personId === null) throw new Error('appendCustody: a custody entry needs a person');
  const last = ledgerHead(tx, 'custody_entry');
  const seq = (last?.seq ?? 0) + 1;
  const previous = last?.hash ?? GENESIS;
  const hash = entryHash(previous, {
    seq, at: change.at, person: change.personId, case: entry.caseId, item: entry.itemId, content: entry.content,
  });
  tx.orm.insert(custodyEntry).values({
    seq, at: change.at, caseId: entry.caseId, itemId: entry.itemId, personId: change.personId,
    content: canonicalJson(entry.content), previous, hash,
  }).run();
  // What was noted on the way is found with its case.
  if (entry.content.note) writeSearch(tx, 'case', [entry.caseId]);
  return { seq, hash };
}

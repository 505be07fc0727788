import type { WriteTx } from '../handle.ts';

/** Reports that count: not withdrawn, and the newest revision of their number. One without a subject is on the whole case. */
const STANDING = `
  SELECT r.subject_id AS subject FROM report r
  WHERE r.case_id = @caseId AND r.revision = (SELECT max(o.revision) FROM report o WHERE o.number = r.number)
    AND NOT EXISTS (SELECT 1 FROM report_withdrawal w WHERE w.report_id = r.id)`;

/** Items of the case that no report covers: neither one on the whole case nor one on the item, nor, where it is no lot, one on each of its stones. */
const UNCOVERED = `
  WITH standing AS (${STANDING})
  SELECT 1 AS one FROM item i
  WHERE i.case_id = @caseId
    AND NOT EXISTS (SELECT 1 FROM standing WHERE subject IS NULL OR subject = i.id)
    AND (i.kind = 'lot' OR NOT EXISTS (SELECT 1 FROM stone s WHERE s.item_id = i.id) OR EXISTS (SELECT 1 FROM stone s WHERE s.item_id = i.id AND s.id NOT IN (SELECT subject FROM standing WHERE subject IS NOT NULL)))
  LIMIT 1`;

/**
 * A case is reported once reports that count cover all of it, and open again where one of them was withdrawn: a report on one stone of many,
 * or one that was taken back, must not take the case from the bench. What has gone back to the client stays closed.
 */
export function settleCase(tx: WriteTx, caseId: string): void {
  const covered = tx.get<{ n: number }>(`SELECT count(*) AS n FROM (${STANDING})`, { caseId })!.n > 0 && tx.get(UNCOVERED, { caseId }) === undefined;
  const state = covered ? 'reported' : 'open';
  // Only what changes: an entry of the audit ledger vouches for the rows that were written.
  tx.run(`UPDATE case_record SET state = @state WHERE id = @caseId AND state <> 'returned' AND state <> @state`, { caseId, state });
}

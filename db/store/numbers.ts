import type { WriteTx } from '../handle.ts';

/**
 * Next number of a kind in a calendar year, from 1 and without gaps: it is given out inside the caller's transaction,
 * so a number whose record is not kept is given out again.
 */
export function nextNumber(tx: WriteTx, kind: 'case' | 'report', year: number): number {
  const row = tx.get<{ last: number }>(
    'INSERT INTO number_counter (kind, year, last) VALUES (?, ?, 1) ON CONFLICT (kind, year) DO UPDATE SET last = last + 1 RETURNING last', [kind, year]);
  return row!.last;
}

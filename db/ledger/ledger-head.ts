import type { ReadDb, WriteTx } from '../handle.ts';

export type LedgerName = 'custody_entry' | 'audit_entry';
export type LedgerHead = { readonly seq: number; readonly hash: string };

/** The last entry of a ledger, or undefined while it is empty. */
export function ledgerHead(db: ReadDb | WriteTx, ledger: LedgerName): LedgerHead | undefined {
  return db.get<LedgerHead>(`SELECT seq, hash FROM ${ledger} ORDER BY seq DESC LIMIT 1`);
}

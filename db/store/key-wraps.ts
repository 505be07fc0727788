import type { WriteTx } from '../handle.ts';
import { keyWrap } from '../schema/index.ts';

/** A copy of the private part as it is stored: hexadecimal digits; `sealed` is empty once it was taken away. `store`: the system's key store that closed it a second time. */
export type Wrap = { readonly id: string; readonly keyId: string; readonly sealedTo: string; readonly sender: string; readonly sealed: string; readonly store: string | null };

/** Writes closed copies inside the caller's transaction; the caller's entry of the audit ledger vouches for them. */
export function writeWraps(tx: WriteTx, at: string, wraps: readonly Wrap[]): void {
  for (const wrap of wraps) {
    tx.orm.insert(keyWrap).values({ ...wrap, madeAt: at }).onConflictDoUpdate({ target: keyWrap.id, set: { ...wrap, madeAt: at } }).run();
  }
}

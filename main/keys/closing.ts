import { hexToBytes, bytesToHex } from '@noble/hashes/utils.js';
import type { StoreBackend } from '../../app/domain/key-closing.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { RECOVERY, type NewCredential } from '../../db/store/credentials.ts';
import type { Wrap } from '../../db/store/key-wraps.ts';
import { openSealed } from './sealed-box.ts';
import type { SystemStore } from './system-store.ts';

/**
 * How copies of the key are closed now. `store`: the box that the password opens is closed once more by the system's key store; `password`: the box
 * alone; `leave`: new copies by the password alone, those that a key store holds stay as they are, since it can't be reached from here.
 */
export type Closing = { readonly how: 'store'; readonly backend: StoreBackend; readonly store: SystemStore } | { readonly how: 'password' | 'leave'; readonly store: SystemStore };

/** What holds in this casebook at this window. Without a recovery sheet no key store is used: a lost store would take the key with it. */
export async function closingNow(casebook: Casebook, store: SystemStore, credentials: Iterable<Pick<NewCredential, 'id'>>): Promise<Closing> {
  if (!await casebook.keys.storeIsWanted()) return { how: 'password', store };
  const state = store.state();
  if (!state.available) return { how: 'leave', store };
  return [...credentials].some((one) => one.id === RECOVERY) ? { how: 'store', backend: state.backend, store } : { how: 'password', store };
}

/** Whether the key store may hold this copy: never that of the recovery sheet, which is the way to another computer, and none that is open or empty. */
const mayBeStored = (wrap: Wrap): boolean => wrap.sealedTo !== '' && wrap.sealed !== '' && !wrap.id.endsWith(`/${RECOVERY}`);

/** The copy with its box closed by the key store; as it is where that does not take it. */
export function putInStore(wrap: Wrap, closing: Closing): Wrap {
  if (closing.how !== 'store' || wrap.store !== null || !mayBeStored(wrap)) return wrap;
  const sealed = closing.store.seal(hexToBytes(wrap.sealed));
  return sealed.ok ? { ...wrap, sealed: bytesToHex(sealed.value), store: closing.backend } : wrap;
}

/** The copy with its bare box; null where the key store does not open it here. */
export function takeFromStore(wrap: Wrap, store: SystemStore): Wrap | null {
  if (wrap.store === null) return wrap;
  const box = store.open(hexToBytes(wrap.sealed));
  return box.ok ? { ...wrap, sealed: bytesToHex(box.value), store: null } : null;
}

/** The private part from a copy; null where it was not made for this credential, was altered, or the key store does not open it. */
export function openWrap(wrap: Wrap, privatePart: Uint8Array, store: SystemStore): Uint8Array | null {
  const bare = takeFromStore(wrap, store);
  return bare === null ? null : openSealed(privatePart, bare, bare.id);
}

/** Whether a copy is closed as it should be. */
export function isClosedRight(wrap: Wrap, closing: Closing): boolean {
  if (!mayBeStored(wrap)) return wrap.store === null;
  if (closing.how === 'leave') return true;
  return closing.how === 'store' ? wrap.store !== null && takeFromStore(wrap, closing.store) !== null : wrap.store === null;
}

/** Copies of keys that no longer sign, closed as the others are: somebody who opened one could still sign under an old date. Those that can't be opened here stay. */
export function othersDue(wraps: readonly Wrap[], closing: Closing): Wrap[] {
  if (closing.how === 'leave') return [];
  return wraps.filter((wrap) => mayBeStored(wrap) && !isClosedRight(wrap, closing)).flatMap((wrap) => {
    const bare = takeFromStore(wrap, closing.store);
    const due = bare === null ? null : putInStore(bare, closing);
    return due === null || due.store === wrap.store ? [] : [due];
  });
}

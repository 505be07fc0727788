import type { StoreBackend } from '../../app/domain/key-closing.ts';
import { err, type Result } from '../../app/result.ts';

/** What the operating system offers. `why` fits after a colon: “this system offers no key store”. */
export type StoreState = { readonly available: true; readonly backend: StoreBackend } | { readonly available: false; readonly why: string };

/** `unavailable`: there is no store, or it can't be reached now. `refused`: it is there and does not close or open these bytes. */
export type StoreFault = { readonly code: 'unavailable' | 'refused'; readonly message: string };

/**
 * The operating system's key store, which closes bytes for this account of this computer. It is asked anew each time: a person may lock it,
 * deny it, or empty it while the program runs.
 */
export type SystemStore = {
  state(): StoreState;
  /** Bytes that only this store opens. What comes back was opened again once, to be sure. */
  seal(content: Uint8Array): Result<Uint8Array, StoreFault>;
  /** What was sealed. Bytes that are not those that were sealed may come back where the store keeps no check of its own: whoever asks checks. */
  open(sealed: Uint8Array): Result<Uint8Array, StoreFault>;
};

/** Where there is none: then the password alone closes the key. */
export function noSystemStore(why: string): SystemStore {
  const none = (): { readonly ok: false; readonly error: StoreFault } => err({ code: 'unavailable', message: why });
  return { state: () => ({ available: false, why }), seal: none, open: none };
}

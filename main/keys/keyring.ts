import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { publicKeyFromHex } from '../../app/signature/fingerprint.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { noCasebook, refused } from '../services/failures.ts';
import { publicKeyOf, signWith } from './ed25519.ts';
import { closedElsewhere } from './how-closed.ts';
import { openWrapOf } from './open-wrap.ts';
import type { Signer } from './signer.ts';
import { noSystemStore, type SystemStore } from './system-store.ts';

/** Whoever keeps a key open: a session, the person of which may sign. */
export type Holder = object;

/** The private part of the key of the casebook that is open, as long as somebody who may sign is there. */
export type Keyring = Signer & {
  /** What the operating system closes the key with, beside the passwords. */
  readonly store: SystemStore;
  /** Keeps the private part in memory for `holder`. */
  hold(holder: Holder, keyId: string, seed: Uint8Array): void;
  /** The holder was locked or signed out: the last one overwrites the private part. */
  release(holder: Holder): void;
  /** For everyone: another casebook was opened. */
  forget(): void;
  /** The private part of this key, or null while it is locked. */
  seedOf(keyId: string): Promise<Uint8Array | null>;
  /** Why nobody's password opens the present key here, where that is because of a key store; else null, as when it is open. */
  closedElsewhere(): Promise<Failure | null>;
};

const locked = (): { readonly ok: false; readonly error: Failure } =>
  err({ code: 'locked', message: 'The laboratory’s key is locked.', next: 'Sign in again with your password to sign.' });

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0;

export function createKeyring(casebook: () => Casebook | null, store: SystemStore = noSystemStore('only Culet’s own window reaches the system’s key store')): Keyring {
  let held: { readonly book: Casebook | null; readonly keyId: string; readonly seed: Uint8Array } | null = null;
  const holders = new Set<Holder>();

  function forget(): void {
    held?.seed.fill(0);
    held = null;
    holders.clear();
  }

  async function seedOf(keyId: string): Promise<Uint8Array | null> {
    const book = casebook();
    if (held !== null && held.book !== book) forget();
    if (held?.keyId === keyId) return held.seed;
    return book === null ? null : openWrapOf(await book.keys.wraps(keyId));
  }

  async function whyClosed(): Promise<Failure | null> {
    const book = casebook();
    const key = book === null ? null : await book.keys.current();
    if (book === null || key === null || await seedOf(key.id) !== null) return null;
    return closedElsewhere(await book.keys.wraps(key.id), store);
  }

  return {
    store, closedElsewhere: whyClosed,
    hold(holder, keyId, seed) {
      if (held !== null && (held.book !== casebook() || held.keyId !== keyId)) {
        held.seed.fill(0);
        held = null;
      }
      held ??= { book: casebook(), keyId, seed: Uint8Array.from(seed) };
      holders.add(holder);
    },
    release(holder) {
      holders.delete(holder);
      if (holders.size === 0) forget();
    },
    forget, seedOf,
    async sign(message): Promise<Result<{ keyId: string; signature: Uint8Array; publicKey: Uint8Array }, Failure>> {
      const book = casebook();
      if (book === null) return noCasebook();
      const key = await book.keys.current();
      if (key === null) return refused('This laboratory has no key to sign with yet.', 'Let a manager sign in with a password: the key is made then.');
      const seed = await seedOf(key.id);
      if (seed === null) {
        const why = await whyClosed();
        return why === null ? locked() : err(why);
      }
      const publicKey = publicKeyOf(seed);
      const stored = publicKeyFromHex(key.publicKey);
      if (stored === null || !sameBytes(publicKey, stored)) {
        return refused('The public key in this casebook is not the one that belongs to its private part: somebody changed it.', 'Verify the ledgers; they name what was changed. Nothing was signed.');
      }
      return ok({ keyId: key.id, signature: signWith(seed, message), publicKey });
    },
  };
}

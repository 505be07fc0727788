import { z } from 'zod';

/** Key stores of operating systems that the laboratory's key can be closed with, beside a password. */
export const STORE_BACKENDS = ['keychain', 'dpapi', 'libsecret', 'kwallet', 'keyring'] as const;
export const storeBackend = z.enum(STORE_BACKENDS);
export type StoreBackend = z.infer<typeof storeBackend>;

/** As their systems call them. `keyring`: a store of a Linux desktop that does not say which. */
export const BACKEND_WORDS: Readonly<Record<StoreBackend, string>> = {
  keychain: 'Keychain', dpapi: 'DPAPI', libsecret: 'libsecret', kwallet: 'KWallet', keyring: 'the desktop’s keyring',
};

/** How the copies of the key that signs are closed, as this window finds them. */
export const keyClosing = z.object({
  /** The key store that this system offers to this window, or null with `why`, which fits after a colon. */
  offered: storeBackend.nullable(),
  why: z.string(),
  /** False once a manager decided against it. */
  wanted: z.boolean(),
  /** What closes the copies of those who may sign. `none`: nobody has one. */
  closedBy: z.enum(['none', 'password', 'store', 'both']),
  /** The key store that closed them, in `store` and `both`. */
  store: storeBackend.nullable(),
  /** Whether this system's key store opens those it is said to have closed. */
  opensHere: z.boolean(),
  /** Whether a recovery sheet opens the key without any key store. */
  sheet: z.boolean(),
});
export type KeyClosing = z.infer<typeof keyClosing>;

/** “the system’s key store (Keychain)” */
export const storeNamed = (backend: StoreBackend | null): string => (backend === null ? 'a key store' : `the system’s key store (${BACKEND_WORDS[backend]})`);

export type ClosingWords = { readonly state: string; readonly more: string };

/** How the private part is kept, for a person: what holds now, and what follows from it. */
export function closingWords(closing: KeyClosing): ClosingWords {
  const { closedBy, store, offered, opensHere, wanted, sheet, why } = closing;
  if (closedBy === 'none') return { state: 'Nobody has a copy of the private part yet.', more: 'It is made when a manager signs in.' };
  if (closedBy !== 'password' && !opensHere) {
    const state = offered === null
      ? `The private part is kept by ${storeNamed(store)}, which can’t be used here: ${why}. Passwords do not open it here.`
      : `The private part is kept by ${storeNamed(store)} of another computer or account, or this one has lost it. Passwords do not open it here.`;
    const there = 'Sign in Culet’s own window on the computer and account where it was closed';
    return { state, more: sheet ? `${there}, or let a manager open it here with the recovery sheet.` : `There is no recovery sheet. ${there}, or make a new key.` };
  }
  if (closedBy === 'store') {
    return {
      state: `The private part is kept by ${storeNamed(store)}, and opened by the password of each person who may sign. A copy of the casebook with a guessed password does not open it.`,
      more: 'On another computer or account it does not open: the recovery sheet is the way there. Know where it is.',
    };
  }
  const risk = 'Whoever has a copy of the casebook can try passwords on it: choose long ones.';
  if (offered === null) return { state: `The private part is kept by the passwords only: ${why}.`, more: risk };
  if (!wanted) return { state: `The private part is kept by the passwords only: a manager decided not to use ${storeNamed(offered)}.`, more: risk };
  if (!sheet) return { state: 'The private part is kept by the passwords only, because there is no recovery sheet that opens it.', more: `Make a new recovery sheet under People: ${storeNamed(offered)} is used from the next sign-in on.` };
  return {
    state: closedBy === 'both' ? `The private part is kept by ${storeNamed(store)} for some, by the password only for others.` : 'The private part is kept by the passwords only so far.',
    more: `At the next sign-in of somebody who may sign, ${storeNamed(offered)} takes over.`,
  };
}

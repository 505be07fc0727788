import { maySign } from '../../app/domain/role.ts';
import type { PersonView } from '../../app/contract/casebook.ts';
import { RECOVERY, type NewCredential } from '../../db/store/credentials.ts';
import type { Wrap } from '../../db/store/key-wraps.ts';
import { isClosedRight, putInStore, type Closing } from './closing.ts';
import { sealFor } from './sealed-box.ts';

type SealTo = Pick<NewCredential, 'id' | 'sealTo'>;

/** What a closed copy is bound to: moved to another row it does not open. */
export const wrapId = (keyId: string, credentialId: string): string => `${keyId}/${credentialId}`;

/** A copy of the private part that this credential opens, with the system's key store where that is used and takes it. */
export function wrapFor(keyId: string, seed: Uint8Array, { id, sealTo }: SealTo, closing: Closing): Wrap {
  return putInStore({ id: wrapId(keyId, id), keyId, ...sealFor(sealTo, seed, wrapId(keyId, id)), store: null }, closing);
}

/**
 * Closed copies that have to be written so that exactly those who may sign, and the recovery sheet, can open the key:
 * new ones where a credential is new or was changed or the copy is not closed as it should be, empty ones where somebody no longer may.
 */
export function wrapsDue(keyId: string, seed: Uint8Array, people: readonly PersonView[], credentials: readonly SealTo[], present: readonly Wrap[], closing: Closing): Wrap[] {
  const signing = new Set([RECOVERY, ...people.filter(maySign).map((person) => person.id)]);
  const known = new Map(present.map((wrap) => [wrap.id, wrap]));
  const due: Wrap[] = [];
  for (const credential of credentials) {
    const there = known.get(wrapId(keyId, credential.id));
    const opens = there !== undefined && there.sealed !== '' && there.sealedTo === credential.sealTo;
    if (signing.has(credential.id) && !(opens && isClosedRight(there, closing))) {
      const fresh = wrapFor(keyId, seed, credential, closing);
      // A key store that does not take it leaves what was there: the same copy anew at every sign-in would say nothing.
      if (!opens || fresh.store !== null || there.store !== null) due.push(fresh);
    }
    if (!signing.has(credential.id) && there !== undefined && there.sealed !== '') due.push({ ...there, sealed: '', store: null });
  }
  return due;
}

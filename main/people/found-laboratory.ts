import { randomBytes } from 'node:crypto';
import { CODE_LENGTH, readCode, writeCode } from '../../app/people/written-code.ts';
import { normalPassword } from '../../app/people/check-password.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { RECOVERY } from '../../db/store/credentials.ts';
import { newKey } from '../keys/new-key.ts';
import { closingNow } from '../keys/closing.ts';
import type { SystemStore } from '../keys/system-store.ts';
import { wrapFor } from '../keys/wraps-due.ts';
import { newCredential } from './derive-credential.ts';

export type Founded = { readonly keyId: string; readonly seed: Uint8Array; /** What stands on the recovery sheet. */ readonly recovery: string };

/** Gives a casebook that was just set up its first password, its key, and the recovery sheet. */
export async function foundLaboratory(casebook: Casebook, at: string, personId: string, password: string, store: SystemStore): Promise<Founded> {
  const recovery = writeCode(randomBytes(CODE_LENGTH.recovery));
  const { key, seed } = newKey('');
  const credentials = [
    (await newCredential(personId, 'password', normalPassword(password))).credential,
    (await newCredential(RECOVERY, 'recovery', readCode(recovery))).credential,
  ];
  const closing = await closingNow(casebook, store, credentials);
  await casebook.keys.create({ at, personId, operation: 'keys.create' }, key, credentials.map((one) => wrapFor(key.id, seed, one, closing)));
  await casebook.credentials.set({ at, personId, operation: 'casebook.create' }, { credentials, wraps: [], subject: personId, content: { set: ['password', 'recovery sheet'] } });
  return { keyId: key.id, seed, recovery };
}

import { bytesToHex } from '@noble/hashes/utils.js';
import { keyIdOf } from '../../app/signature/fingerprint.ts';
import type { Change } from '../../db/change.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { publicKeyOf } from './ed25519.ts';
import { makeOpenWrap } from './open-wrap.ts';

/** Said in the ledger and wherever the key is shown. */
const REASON = 'invented, no secret: it proves nothing';

/** Gives a casebook of invented data a key that anyone may sign with. Returns the key's id. */
export async function makeOpenKey(casebook: Casebook, change: Change, seed: Uint8Array): Promise<string> {
  const publicKey = publicKeyOf(seed);
  const id = keyIdOf(publicKey);
  await casebook.keys.create(change, { id, publicKey: bytesToHex(publicKey), reason: REASON }, [makeOpenWrap(id, seed)]);
  return id;
}

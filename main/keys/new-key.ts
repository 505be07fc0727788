import { randomBytes } from 'node:crypto';
import { bytesToHex } from '@noble/hashes/utils.js';
import { keyIdOf } from '../../app/signature/fingerprint.ts';
import type { NewKey } from '../../db/store/keys.ts';
import { publicKeyOf, SEED_BYTES } from './ed25519.ts';

/** A pair from the machine's randomness; `reason` says why it replaces another, and is empty for the first. */
export function newKey(reason: string): { readonly key: NewKey; readonly seed: Uint8Array } {
  const seed = new Uint8Array(randomBytes(SEED_BYTES));
  const publicKey = publicKeyOf(seed);
  return { key: { id: keyIdOf(publicKey), publicKey: bytesToHex(publicKey), reason }, seed };
}

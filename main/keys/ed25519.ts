import { createPrivateKey, createPublicKey, sign, type KeyObject } from 'node:crypto';
import { PUBLIC_KEY_BYTES } from '../../app/signature/fingerprint.ts';

/** Bytes of the private part (RFC 8032, 5.1.5: the seed that everything else follows from). */
export const SEED_BYTES = 32;

/** What stands before a seed in PKCS#8 (RFC 8410, 7). */
const PKCS8_HEAD = Buffer.from('302e020100300506032b657004220420', 'hex');

function keyOf(seed: Uint8Array): KeyObject {
  if (seed.byteLength !== SEED_BYTES) throw new RangeError(`an Ed25519 seed has ${SEED_BYTES} bytes, not ${seed.byteLength}`);
  return createPrivateKey({ key: Buffer.concat([PKCS8_HEAD, seed]), format: 'der', type: 'pkcs8' });
}

/** Raw public key of a seed. */
export function publicKeyOf(seed: Uint8Array): Uint8Array {
  const spki = createPublicKey(keyOf(seed)).export({ format: 'der', type: 'spki' });
  return new Uint8Array(spki.subarray(spki.byteLength - PUBLIC_KEY_BYTES));
}

/** Signature over `message`, 64 bytes. */
export const signWith = (seed: Uint8Array, message: Uint8Array): Uint8Array => new Uint8Array(sign(null, message, keyOf(seed)));

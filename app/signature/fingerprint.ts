import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js';

/** Bytes of a raw Ed25519 public key (RFC 8032, 5.1.5). */
export const PUBLIC_KEY_BYTES = 32;

/** Digits of a key's id: enough to tell the keys of a few laboratories apart at a glance. Whoever checks compares the fingerprint. */
const ID_DIGITS = 16;

/** Digits that stand together when a fingerprint is read aloud. */
const GROUP_DIGITS = 4;

/** SHA-256 of a raw Ed25519 public key as 64 hexadecimal digits. Throws a RangeError where it is not 32 bytes long. */
export function fingerprintOf(publicKey: Uint8Array): string {
  if (publicKey.byteLength !== PUBLIC_KEY_BYTES) throw new RangeError(`fingerprintOf: a public key has ${PUBLIC_KEY_BYTES} bytes, not ${publicKey.byteLength}`);
  return bytesToHex(sha256(publicKey));
}

/** The short name of a key: the first 16 digits of its fingerprint. */
export const keyIdOf = (publicKey: Uint8Array): string => fingerprintOf(publicKey).slice(0, ID_DIGITS);

/** A fingerprint in groups of four digits, to be compared by eye or over the telephone. */
export const inGroups = (fingerprint: string): string => fingerprint.match(new RegExp(`.{1,${GROUP_DIGITS}}`, 'g'))?.join(' ') ?? '';

/** The bytes of a public key kept as 64 hexadecimal digits, or null for any other text. */
export function publicKeyFromHex(text: string): Uint8Array | null {
  return new RegExp(`^[0-9a-f]{${2 * PUBLIC_KEY_BYTES}}$`).test(text) ? hexToBytes(text) : null;
}

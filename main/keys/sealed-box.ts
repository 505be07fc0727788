import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import { x25519 } from '@noble/curves/ed25519.js';
import { hkdf } from '@noble/hashes/hkdf.js';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';

/** Bytes closed for whoever has the private part of an X25519 key; hexadecimal digits. */
export type SealedBox = { readonly sealedTo: string; readonly sender: string; readonly sealed: string };

const KEY_BYTES = 32;
const NONCE_BYTES = 12;
const TAG_BYTES = 16;
const PURPOSE = utf8ToBytes('Culet closed copy of a key, 1');

/** Key and nonce for one box: the sender's key is used once, so neither ever comes twice. The two public keys are mixed in, as RFC 7748 (6.1) advises. */
function boxKey(shared: Uint8Array, sender: Uint8Array, sealedTo: Uint8Array): { key: Uint8Array; nonce: Uint8Array } {
  const both = hkdf(sha256, shared, Uint8Array.of(...sender, ...sealedTo), PURPOSE, KEY_BYTES + NONCE_BYTES);
  return { key: both.subarray(0, KEY_BYTES), nonce: both.subarray(KEY_BYTES) };
}

/** Public key (X25519) of a private part of 32 bytes, hexadecimal. */
export const sealToOf = (privatePart: Uint8Array): string => bytesToHex(x25519.getPublicKey(privatePart));

/** Closes `content` for the owner of `sealedTo` (64 hexadecimal digits); `bound` must be the same when it is opened. AES-256-GCM (NIST SP 800-38D). */
export function sealFor(sealedTo: string, content: Uint8Array, bound: string): SealedBox {
  const once = randomBytes(KEY_BYTES);
  const to = hexToBytes(sealedTo);
  const sender = x25519.getPublicKey(once);
  const { key, nonce } = boxKey(x25519.getSharedSecret(once, to), sender, to);
  const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(utf8ToBytes(bound));
  const sealed = Buffer.concat([cipher.update(content), cipher.final(), cipher.getAuthTag()]);
  return { sealedTo, sender: bytesToHex(sender), sealed: sealed.toString('hex') };
}

/** The content, or null where this is not the key, or anything of the box or of `bound` was altered. */
export function openSealed(privatePart: Uint8Array, box: SealedBox, bound: string): Uint8Array | null {
  try {
    const to = hexToBytes(box.sealedTo);
    const sender = hexToBytes(box.sender);
    const all = Buffer.from(hexToBytes(box.sealed));
    const { key, nonce } = boxKey(x25519.getSharedSecret(privatePart, sender), sender, to);
    const decipher = createDecipheriv('aes-256-gcm', key, nonce, { authTagLength: TAG_BYTES }).setAAD(utf8ToBytes(bound)).setAuthTag(all.subarray(all.byteLength - TAG_BYTES));
    return new Uint8Array(Buffer.concat([decipher.update(all.subarray(0, all.byteLength - TAG_BYTES)), decipher.final()]));
  } catch {
    return null;
  }
}

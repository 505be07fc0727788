import { ed25519 } from '@noble/curves/ed25519.js';

/** Bytes of an Ed25519 signature (RFC 8032, 5.1.6). */
export const SIGNATURE_BYTES = 64;

/**
 * Whether `signature` was made over exactly `message` with the private part of `publicKey` (Ed25519, RFC 8032; strict: a signature has one form only).
 * False for anything that is no key or no signature; never throws.
 */
export function verifySignature(publicKey: Uint8Array, message: Uint8Array, signature: Uint8Array): boolean {
  try {
    return ed25519.verify(signature, message, publicKey, { zip215: false });
  } catch {
    return false;
  }
}

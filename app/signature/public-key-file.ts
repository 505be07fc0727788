import { fromBase64, toBase64 } from '../contract/base64.ts';
import { err, ok, type Result } from '../result.ts';
import { fingerprintOf, inGroups, keyIdOf, PUBLIC_KEY_BYTES } from './fingerprint.ts';

/** A laboratory's public key as it is handed to strangers. `madeAt`: UTC, ISO 8601. */
export type PublicKeyFile = { readonly laboratory: string; readonly publicKey: Uint8Array; readonly madeAt: string; readonly invented: boolean };

/** What stands before the 32 bytes of an Ed25519 key in a SubjectPublicKeyInfo (RFC 8410, 4). */
const SPKI_HEAD = Uint8Array.of(0x30, 0x2a, 0x30, 0x05, 0x06, 0x03, 0x2b, 0x65, 0x70, 0x03, 0x21, 0x00);

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** The three lines of the PEM form (RFC 7468). `publicKey`: raw, 32 bytes. */
export const publicKeyLines = (publicKey: Uint8Array): readonly [string, string, string] =>
  ['-----BEGIN PUBLIC KEY-----', toBase64(Uint8Array.of(...SPKI_HEAD, ...publicKey)), '-----END PUBLIC KEY-----'];

/**
 * The file that strangers get: lines for a person, then the key in the PEM form that common tools read (RFC 7468, RFC 8410).
 * Tools skip the lines before the PEM part.
 */
export function writePublicKeyFile({ laboratory, publicKey, madeAt, invented }: PublicKeyFile): string {
  return [
    'Public key of a laboratory that keeps its cases with Culet',
    `Laboratory: ${oneLine(laboratory)}`,
    `Key: ${keyIdOf(publicKey)}`,
    `Fingerprint: ${inGroups(fingerprintOf(publicKey))}`,
    `Made: ${madeAt}`,
    ...(invented ? ['Invented: this key belongs to the demonstration and proves nothing'] : []),
    'Compare the fingerprint with what the laboratory tells you by another way, for instance by telephone.',
    ...publicKeyLines(publicKey),
    '',
  ].join('\n');
}

const lineOf = (text: string, name: string): string => new RegExp(`^${name}:[ \\t]*(.*?)\\s*$`, 'm').exec(text)?.[1] ?? '';

/** Reads such a file, or one that holds the PEM part alone (`laboratory` and `madeAt` are then empty). Fails with a sentence. */
export function readPublicKeyFile(text: string): Result<PublicKeyFile, string> {
  const body = /-----BEGIN PUBLIC KEY-----([A-Za-z0-9+/=\s]*)-----END PUBLIC KEY-----/.exec(text)?.[1]?.replace(/\s/g, '');
  if (body === undefined) return err('This file holds no public key: the lines between BEGIN PUBLIC KEY and END PUBLIC KEY are missing.');
  const bytes = decoded(body);
  if (bytes === null || bytes.byteLength !== SPKI_HEAD.byteLength + PUBLIC_KEY_BYTES || SPKI_HEAD.some((byte, i) => bytes[i] !== byte)) {
    return err('This file holds a key, but not one that Culet knows (Ed25519).');
  }
  const publicKey = bytes.slice(SPKI_HEAD.byteLength);
  const stated = lineOf(text, 'Fingerprint').replace(/\s/g, '').toLowerCase();
  if (stated !== '' && stated !== fingerprintOf(publicKey)) return err('The fingerprint written in this file is not that of the key in it: the file was changed.');
  return ok({ laboratory: lineOf(text, 'Laboratory'), publicKey, madeAt: lineOf(text, 'Made'), invented: lineOf(text, 'Invented') !== '' });
}

function decoded(text: string): Uint8Array | null {
  try {
    return fromBase64(text);
  } catch {
    return null;
  }
}

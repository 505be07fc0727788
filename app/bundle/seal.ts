import { utf8ToBytes } from '@noble/hashes/utils.js';
import { fromBase64, toBase64 } from '../contract/base64.ts';
import { sha256Hex } from '../custody/chain.ts';
import { publicKeyLines, readPublicKeyFile } from '../signature/public-key-file.ts';
import { statementBytes } from '../signature/signed-statement.ts';
import { SIGNATURE_BYTES, verifySignature } from '../signature/verify-signature.ts';
import { bundleStatement, type BundleStatement } from './bundle-documents.ts';

export type SealSignature = { readonly signature: Uint8Array; readonly publicKey: Uint8Array };
/** What a seal says. `signed` null where the laboratory's key was not open. */
export type Seal = { readonly statement: BundleStatement; readonly signed: SealSignature | null };

const UNSIGNED = 'unsigned: the key of the laboratory was not open';
const OWN_DIGEST = 'SHA-256 of the first line: ';

/**
 * seal.txt: the statement as canonical JSON, then the signature over exactly that line in base64 and the public key in PEM;
 * where there is no signature, the word and the line's own digest. There is one way only to write it.
 */
export function writeSeal({ statement, signed }: Seal): Uint8Array {
  const line = new TextDecoder().decode(statementBytes(statement));
  const rest = signed === null ? [UNSIGNED, OWN_DIGEST + sha256Hex(line)] : [toBase64(signed.signature), ...publicKeyLines(signed.publicKey)];
  return utf8ToBytes([line, ...rest, ''].join('\n'));
}

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => a.byteLength === b.byteLength && a.every((byte, i) => byte === b[i]);

/** Reads a seal; null for anything that is not exactly as it would be written, or whose signature or digest does not hold. Whose key it is is not judged here. */
export function readSeal(bytes: Uint8Array): Seal | null {
  try {
    const lines = new TextDecoder('utf-8', { fatal: true }).decode(bytes).split('\n');
    const statement = bundleStatement.parse(JSON.parse(lines[0] ?? ''));
    const signed = lines[1] === UNSIGNED ? null : signatureOf(lines);
    if (signed === undefined || !sameBytes(bytes, writeSeal({ statement, signed }))) return null;
    return signed === null || verifySignature(signed.publicKey, statementBytes(statement), signed.signature) ? { statement, signed } : null;
  } catch {
    return null;
  }
}

function signatureOf(lines: readonly string[]): SealSignature | undefined {
  const key = readPublicKeyFile(lines.slice(2, 5).join('\n'));
  const signature = fromBase64(lines[1] ?? '');
  return key.ok && signature.byteLength === SIGNATURE_BYTES ? { signature, publicKey: key.value.publicKey } : undefined;
}

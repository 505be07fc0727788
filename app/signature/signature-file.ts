import { utf8ToBytes } from '@noble/hashes/utils.js';
import { fromBase64, toBase64 } from '../contract/base64.ts';
import { publicKeyLines, readPublicKeyFile } from './public-key-file.ts';
import { reportStatement, type ReportStatement } from './report-statement.ts';
import { statementBytes } from './signed-statement.ts';
import { SIGNATURE_BYTES } from './verify-signature.ts';

/** Name under which the signature is attached to a report. */
export const SIGNATURE_FILE_NAME = 'signature.txt';

/** Bytes of the signature file, always the same, so that its place is known before it is written: far more than the longest name of a laboratory needs. */
export const SIGNATURE_FILE_BYTES = 3072;

/** Near the beginning of every signed report: whoever damages the signature leaves a file that still says it had one. */
export const SIGNED_REMARK = 'Culet signed report';

export type SignatureFile = {
  readonly statement: ReportStatement;
  /** Exactly what was signed: the file's first line, without its end. */
  readonly message: Uint8Array;
  readonly signature: Uint8Array;
  readonly publicKey: Uint8Array;
};

const FILL = '.';
const LINE = 0x0a;
/** Statement, signature, three lines of the key, the fill, and nothing after the last line's end. */
const LINES = 7;

/** What stands there while the file is drawn: no other part of a PDF looks like it. */
export const emptySignatureFile = (): Uint8Array => new Uint8Array(SIGNATURE_FILE_BYTES).fill(FILL.charCodeAt(0));

/**
 * The signature file: the statement as canonical JSON, the signature in base64, the public key in PEM, and a line of dots up to the fixed length.
 * There is one way only to write it. Throws a RangeError where the statement is too long.
 */
export function writeSignatureFile(statement: ReportStatement, signature: Uint8Array, publicKey: Uint8Array): Uint8Array {
  const statementLine = new TextDecoder().decode(statementBytes(statement));
  const written = utf8ToBytes([statementLine, toBase64(signature), ...publicKeyLines(publicKey), ''].join('\n'));
  if (written.byteLength + 1 > SIGNATURE_FILE_BYTES) throw new RangeError(`writeSignatureFile: ${written.byteLength} bytes do not fit into ${SIGNATURE_FILE_BYTES}`);
  const file = emptySignatureFile();
  file.set(written);
  file[SIGNATURE_FILE_BYTES - 1] = LINE;
  return file;
}

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => a.byteLength === b.byteLength && a.every((byte, i) => byte === b[i]);

/** Reads a signature file; null for anything that is not exactly as it would be written. Whether the signature holds is not judged here. */
export function readSignatureFile(bytes: Uint8Array): SignatureFile | null {
  if (bytes.byteLength !== SIGNATURE_FILE_BYTES) return null;
  try {
    const lines = new TextDecoder('utf-8', { fatal: true }).decode(bytes).split('\n');
    const statement = reportStatement.safeParse(JSON.parse(lines[0] ?? ''));
    const key = readPublicKeyFile(lines.slice(2, 5).join('\n'));
    const signature = fromBase64(lines[1] ?? '');
    if (lines.length !== LINES || !statement.success || !key.ok || signature.byteLength !== SIGNATURE_BYTES) return null;
    const { publicKey } = key.value;
    if (!sameBytes(bytes, writeSignatureFile(statement.data, signature, publicKey))) return null;
    return { statement: statement.data, message: statementBytes(statement.data), signature, publicKey };
  } catch {
    return null;
  }
}

const OPENING = utf8ToBytes('{"content":{"bytes":');

/** Whether bytes begin as a signature file does, sound or not. */
export const looksLikeSignatureFile = (bytes: Uint8Array): boolean => OPENING.every((byte, i) => bytes[i] === byte);

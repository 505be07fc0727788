import { expect, test } from 'vitest';
import type { ReportStatement } from '../../../../app/signature/report-statement.ts';
import { emptySignatureFile, looksLikeSignatureFile, readSignatureFile, SIGNATURE_FILE_BYTES, writeSignatureFile } from '../../../../app/signature/signature-file.ts';
import { statementBytes } from '../../../../app/signature/signed-statement.ts';

const digest = (letter: string): string => letter.repeat(64);
const statement = (laboratory = 'Saltmarsh Gem Laboratory'): ReportStatement => ({
  statement: 'culet-report-1', laboratory, demonstration: true, number: 'S-2026-0088', revision: 1, issuedAt: '2026-11-25T10:15:00.000Z',
  content: { bytes: 1220, sha256: digest('a') },
  file: { bytes: 80_000, sha256: digest('b'), signature: { at: 27_000, bytes: SIGNATURE_FILE_BYTES }, attachments: { at: 24_000, bytes: 7000 }, pages: digest('c') },
});
const signature = new Uint8Array(64).fill(3);
const publicKey = new Uint8Array(32).fill(5);

test('what is written is read again, at one length, with the signed line first', () => {
  const file = writeSignatureFile(statement(), signature, publicKey);
  expect(file.byteLength).toBe(SIGNATURE_FILE_BYTES);
  expect(looksLikeSignatureFile(file)).toBe(true);
  const read = readSignatureFile(file)!;
  expect(read.statement).toEqual(statement());
  expect([...read.signature, ...read.publicKey]).toEqual([...signature, ...publicKey]);
  const [first] = new TextDecoder().decode(file).split('\n');
  expect(first).toBe(new TextDecoder().decode(statementBytes(statement())));
  expect(new TextDecoder().decode(read.message)).toBe(first);
});

test('the longest name a laboratory may have fits, in any script', () => {
  expect(readSignatureFile(writeSignatureFile(statement('𝔏'.repeat(160)), signature, publicKey))?.statement.laboratory).toBe('𝔏'.repeat(160));
});

test('a statement that is too long is a fault, not a shorter file', () => {
  expect(() => writeSignatureFile(statement('x'.repeat(4000)), signature, publicKey)).toThrow(RangeError);
});

test('the same content written in any other way is not read', () => {
  const file = writeSignatureFile(statement(), signature, publicKey);
  const text = new TextDecoder().decode(file);
  const padded = (other: string): Uint8Array => new TextEncoder().encode(other).slice(0, SIGNATURE_FILE_BYTES);
  for (const other of [
    text.replace('"bytes":1220', '"bytes": 1220').replace('.\n', '\n'), text.replace('....\n', '...\n\n'), text.replace('\n', '\r\n').replace('..\n', '.\n'),
    text.replace('{"content"', ' {"content"').replace('..\n', '.\n'), text.replace('....\n', '..x.\n'),
  ]) {
    expect(other).not.toBe(text);
    expect(readSignatureFile(padded(other))).toBeNull();
  }
  for (const bytes of [emptySignatureFile(), new Uint8Array(0), file.subarray(1), Uint8Array.of(...file, 10)]) expect(readSignatureFile(bytes)).toBeNull();
});

import { createPublicKey } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { fingerprintOf, inGroups } from '../../../../app/signature/fingerprint.ts';
import { readPublicKeyFile, writePublicKeyFile } from '../../../../app/signature/public-key-file.ts';
import { publicKeyOf } from '../../../../main/keys/ed25519.ts';

const publicKey = publicKeyOf(new Uint8Array(32).fill(1));
const FILE = { laboratory: 'Invented\nLaboratory', publicKey, madeAt: '2026-11-25T09:00:00.000Z', invented: true };
const text = writePublicKeyFile(FILE);

describe('the file of a public key', () => {
  test('is read back as it was written', () => {
    expect(readPublicKeyFile(text)).toEqual({ ok: true, value: { ...FILE, laboratory: 'Invented Laboratory' } });
    expect(readPublicKeyFile(text.replaceAll('\n', '\r\n'))).toMatchObject({ ok: true, value: { publicKey } });
  });
  test('says the fingerprint in groups, and that an invented key proves nothing', () => {
    expect(text).toContain(`Fingerprint: ${inGroups(fingerprintOf(publicKey))}`);
    expect(text).toContain('proves nothing');
    expect(writePublicKeyFile({ ...FILE, invented: false })).not.toContain('nvented:');
  });
  test('is a key to common tools', () => {
    const pem = text.slice(text.indexOf('-----BEGIN'));
    expect(createPublicKey(pem).export({ format: 'der', type: 'spki' }).subarray(12)).toEqual(Buffer.from(publicKey));
  });
  test('the PEM part alone is enough', () => {
    expect(readPublicKeyFile(text.slice(text.indexOf('-----BEGIN')))).toMatchObject({ ok: true, value: { publicKey, laboratory: '', invented: false } });
  });
  test('a fingerprint that is not that of the key is refused', () => {
    const other = writePublicKeyFile({ ...FILE, publicKey: publicKeyOf(new Uint8Array(32).fill(2)) });
    const swapped = text.slice(0, text.indexOf('-----BEGIN')) + other.slice(other.indexOf('-----BEGIN'));
    expect(readPublicKeyFile(swapped)).toEqual({ ok: false, error: expect.stringContaining('was changed') as string });
  });
  test('what is no such file is refused in a sentence', () => {
    expect(readPublicKeyFile('nothing')).toEqual({ ok: false, error: expect.stringContaining('no public key') as string });
    expect(readPublicKeyFile('-----BEGIN PUBLIC KEY-----\nAAAA\n-----END PUBLIC KEY-----')).toEqual({ ok: false, error: expect.stringContaining('Ed25519') as string });
    expect(readPublicKeyFile('-----BEGIN PUBLIC KEY-----\nAAA\n-----END PUBLIC KEY-----')).toEqual({ ok: false, error: expect.stringContaining('Ed25519') as string });
  });
});

import { describe, expect, test } from 'vitest';
import { fingerprintOf, inGroups, keyIdOf, publicKeyFromHex } from '../../../../app/signature/fingerprint.ts';

const KEY = new Uint8Array(32);

describe('fingerprint', () => {
  test('is the SHA-256 of the raw key, its id the first 16 digits', () => {
    // SHA-256 of 32 zero bytes, by sha256sum.
    expect(fingerprintOf(KEY)).toBe('66687aadf862bd776c8fc18b8e9f8e20089714856ee233b3902a591d0d5f2925');
    expect(keyIdOf(KEY)).toBe('66687aadf862bd77');
  });
  test('stands in groups of four', () => {
    expect(inGroups('66687aadf862')).toBe('6668 7aad f862');
    expect(inGroups('')).toBe('');
  });
  test('is refused for anything but 32 bytes', () => {
    expect(() => fingerprintOf(new Uint8Array(31))).toThrow(RangeError);
  });
  test('a public key is 64 small hexadecimal digits', () => {
    expect(publicKeyFromHex('00'.repeat(32))).toEqual(KEY);
    for (const text of ['', '00'.repeat(31), 'g'.repeat(64), 'A'.repeat(64)]) expect(publicKeyFromHex(text)).toBeNull();
  });
});

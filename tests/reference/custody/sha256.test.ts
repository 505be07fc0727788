import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sha256Hex } from '../../../app/custody/chain.ts';

const vectors = JSON.parse(readFileSync(resolve(import.meta.dirname, '../../fixtures/custody/sha256.json'), 'utf8')) as {
  text: [string, string][]; repeated: [string, number, string][];
};

describe('SHA-256 against the published examples (FIPS 180-4)', () => {
  test.each(vectors.text)('text %j', (message, digest) => {
    expect(sha256Hex(message)).toBe(digest);
  });
  test.each(vectors.repeated)('byte %s, %i times', (byte, times, digest) => {
    expect(sha256Hex(new Uint8Array(times).fill(Number.parseInt(byte, 16)))).toBe(digest);
  });
});

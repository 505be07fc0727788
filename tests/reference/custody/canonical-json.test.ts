import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { canonicalJson, type JsonValue } from '../../../app/custody/canonical-json.ts';
import { sha256Hex } from '../../../app/custody/chain.ts';

const vectors = JSON.parse(readFileSync(resolve(import.meta.dirname, '../../fixtures/custody/rfc8785.json'), 'utf8')) as {
  documents: { input: string; output: string; sha256: string }[]; numbers: [string, string][];
};

const doubleOf = (hex: string): number => new DataView(Uint8Array.from(hex.match(/../g)!, (pair) => Number.parseInt(pair, 16)).buffer).getFloat64(0);

describe('canonical JSON against RFC 8785', () => {
  test.each(vectors.documents)('$input', ({ input, output, sha256 }) => {
    const text = canonicalJson(JSON.parse(input) as JsonValue);
    expect(text).toBe(output);
    expect(sha256Hex(text)).toBe(sha256);
  });
  test.each(vectors.numbers)('double %s is written %s (appendix B)', (hex, text) => {
    expect(canonicalJson(doubleOf(hex))).toBe(text);
  });
  test('names are sorted by UTF-16 code units (section 3.2.3): U+1F602 before U+FB33', () => {
    expect(canonicalJson({ '\uFB33': 1, '\u{1F602}': 2, '\u00F6': 3, '1': 4 })).toBe('{"1":4,"\u00F6":3,"\u{1F602}":2,"\uFB33":1}');
  });
  test('no Unicode normalisation (section 3.1): composed and decomposed stay apart', () => {
    expect(canonicalJson('\u00e9')).not.toBe(canonicalJson('e\u0301'));
  });
});

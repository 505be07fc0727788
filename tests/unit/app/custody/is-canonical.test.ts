import { describe, expect, test } from 'vitest';
import { canonicalJson, type JsonValue } from '../../../../app/custody/canonical-json.ts';
import { entryHash, hashedText, sha256Hex } from '../../../../app/custody/chain.ts';
import { isCanonical } from '../../../../app/custody/is-canonical.ts';

describe('whether a text is canonical', () => {
  test.each([
    ['{"a":1,"b":[{"c":"é","d":null}]}', true], ['{"10":1,"9":2}', true], ['{"9":2,"10":1}', false], ['{"b":1,"a":2}', false], ['{"a":[{"d":1,"c":2}]}', false], ['{"a":1.0}', false],
    ['{"a":1e21}', false], ['{"a":1e+21}', true], ['{"a":-0}', false], ['{"a":"\\u00e9"}', false], ['{"a":"\\u001f"}', true], ['{"a":1,"a":1}', false], ['{ "a":1}', false], ['{"a":"\\/"}', false],
    ['{"€":1,"😀":2,"\ufb33":3}', true], ['{"\ufb33":3,"😀":2}', false], ['"x"', true], ['{"__proto__":{"b":1}}', true],
  ])('%s: %s', (text, canonical) => {
    const value = JSON.parse(text) as JsonValue;
    expect(isCanonical(text, value)).toBe(canonical);
    expect(canonicalJson(value) === text).toBe(canonical);
  });
  test('half of a surrogate pair has no canonical form', () => {
    expect(() => isCanonical('"\\ud800"', JSON.parse('"\\ud800"') as JsonValue)).toThrow();
  });
});

test.each([
  { seq: 1, at: '2026-03-02T09:00:00.000Z', person: 'ada', case: 'c', item: 'i', content: { event: 'received', note: 'say “so” \\ "now"\n' } },
  { seq: 7, at: 'at', person: null, operation: 'clients.save', subject: 'Zoë "Q" \\', case: null, content: { z: [1, { b: 2, a: 'é' }] } },
])('a statement is hashed as it was when it was written: %o', (statement) => {
  const { content, ...kept } = statement;
  expect(sha256Hex(hashedText('0'.repeat(64), kept, canonicalJson(content as unknown as JsonValue)))).toBe(entryHash('0'.repeat(64), statement as Parameters<typeof entryHash>[1]));
});

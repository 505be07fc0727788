import { describe, expect, test } from 'vitest';
import { canonicalJson, type JsonValue } from '../../../../app/custody/canonical-json.ts';

describe('canonicalJson refuses what JSON would bend', () => {
  test.each([
    ['not a number', { a: Number.NaN }], ['an infinity', [Number.POSITIVE_INFINITY]], ['minus infinity', -Infinity],
    ['a lone high surrogate', 'a\uD800'], ['a lone low surrogate in a name', { '\uDC00': 1 }],
    ['a hole in an array', [1, undefined] as unknown as JsonValue], ['no value', undefined as unknown as JsonValue],
    ['a big integer', { n: 1n } as unknown as JsonValue],
  ])('%s', (_name, value) => {
    expect(() => canonicalJson(value as JsonValue)).toThrow();
  });
  test('members without a value are left out', () => {
    expect(canonicalJson({ b: 1, a: undefined })).toBe('{"b":1}');
  });
});

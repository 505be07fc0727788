import { describe, expect, test } from 'vitest';
import { canonicalJson, type JsonValue } from '../../../../app/custody/canonical-json.ts';
import { canonicalMembers, stringsOf } from '../../../../app/custody/canonical-members.ts';
import { EntryReader } from '../../../../app/custody/entry-reader.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';

describe('seeing that a text is canonical without reading it', () => {
  test.each([
    '{}', '{"a":1,"b":[{"c":"é","d":null}],"e":{},"f":[]}', '{"10":1,"9":2}', '{"a":0,"b":-7,"c":999999999999999,"d":true,"e":false}', '{"__proto__":{"b":1}}', '{"":""}',
  ])('%s is seen', (text) => {
    expect(canonicalJson(JSON.parse(text) as JsonValue)).toBe(text);
    expect(canonicalMembers(text, [])).toBe(true);
  });
  test.each([
    '', '1', '[]', '"x"', 'null', '{', '{"a"', '{"a":', '{"a":1', '{"a":1,', '{"a":1,}', '{,}', '{"a":1}x', '{"a":1}{}', ' {"a":1}', '{"a" :1}', '{"a": 1}', '{"b":1,"a":2}', '{"a":1,"a":1}',
    '{"a":01}', '{"a":-0}', '{"a":-}', '{"a":1.0}', '{"a":1e3}', '{"a":1E400}', '{"a":12345678901234567890}', '{"a":+1}', '{"a":nul}', '{"a":nulls}', '{"a":True}', '{"a":[1,]}', '{"a":[,1]}', '{"a":[1 ,2]}',
    '{"a":"\\u00e9"}', '{"a":"\\/"}', '{"a":"\n"}', '{"a":"\ud800"}', '{a:1}', '{\'a\':1}', '{"a":undefined}', '{"a":{"d":1,"c":2}}', '{"a":[{"d":1,"c":2}]}', `{"a":${'['.repeat(99)}${']'.repeat(99)}}`,
  ])('%s is not', (text) => { expect(canonicalMembers(text, [])).toBe(false); });

  test('whatever is changed in a canonical text: what is still seen as canonical is canonical', () => {
    const random = seededRandom(20261127);
    const pick = <T>(list: readonly T[]): T => list[random.below(list.length)]!;
    const value = (depth: number): JsonValue => {
      const kind = random.below(depth > 0 ? 7 : 5);
      if (kind === 0) return pick([0, 1, -5, 1e15, 2 ** 53, 1.5, -0.25, 1e21]);
      if (kind <= 2) return pick(['', 'plain', 'Zoë', '"', '\\', '\n', '😀', '\u007f', ',"rows":{', '}']);
      if (kind === 3) return pick([null, true, false]);
      if (kind === 4) return random.below(1000);
      if (kind === 5) return Array.from({ length: random.below(4) }, () => value(depth - 1));
      return Object.fromEntries(Array.from({ length: random.below(5) }, () => [pick(['a', 'b', 'rows', 'digests', 'é', '10', '9', 'with "quotes"']), value(depth - 1)]));
    };
    let seen = 0;
    for (let i = 0; i < 20_000; i++) {
      const text = canonicalJson({ x: value(3), rows: { k: 'v' }, y: value(2) });
      const at = random.below(text.length + 1);
      const other = random.below(3) === 0 ? text : text.slice(0, at) + pick(['', '"', ',', '}', '{', '0', '-', ' ', '\\', 'a', '\u0001', ':', '1']) + text.slice(at + random.below(2));
      if (!canonicalMembers(other, [])) continue;
      seen += 1;
      expect(canonicalJson(JSON.parse(other) as JsonValue)).toBe(other);
    }
    expect(seen).toBeGreaterThan(2000);
  });
});

test('an object of strings is taken apart, anything else is not', () => {
  expect(stringsOf('{"a":{"k":"v","l":""}}', 5, 21)).toEqual(['k', 'v', 'l', '']);
  expect(stringsOf('{}', 0, 2)).toEqual([]);
  expect(stringsOf('{"k":1}', 0, 7)).toBeNull();
  expect(stringsOf('[1]', 0, 3)).toBeNull();
});

test.each([
  '{"rows":{"stone/1":"aa","stone/2":"bb"},"subject":"plain","n":3}', '{"n":3,"rows":{"stone/1":"aa","stone/2":"bb"},"subject":"plain"}',
  '{"n":3,"note":"\\n","rows":{"stone/1":"aa","stone/2":"bb"},"subject":"plain"}',
])('members are read alike from a text that is seen and from one that is parsed: %s', (text) => {
  const reader = new EntryReader();
  expect(reader.read(text)).toBe(true);
  expect(reader.pairs('rows')).toEqual(['stone/1', 'aa', 'stone/2', 'bb']);
  expect([reader.member('subject'), reader.member('n'), reader.member('row'), reader.member('toString')]).toEqual(['plain', 3, undefined, undefined]);
  expect(reader.pairs('subject')).toEqual([]);
  expect(reader.read('{')).toBe(false);
  expect(reader.read('{}')).toBe(true);
  expect([reader.isCanonical(), reader.member('n'), reader.pairs('rows')]).toEqual([true, undefined, []]);
});

import { describe, expect, test } from 'vitest';
import { fromBase64, toBase64 } from '../../../../app/contract/base64.ts';
import { valueOfText, valueToText } from '../../../../app/contract/value-text.ts';
import { decodeWire, encodeWire } from '../../../../app/contract/wire.ts';

const decodeText = (text: string): unknown => decodeWire(new TextEncoder().encode(text));
const roundTrip = (value: unknown): unknown => decodeWire(encodeWire(value));

/** Numbers that look random and are the same at every run (Numerical Recipes' linear congruential generator). */
function seededBytes(length: number, seed: number): Uint8Array {
  let state = seed >>> 0;
  return Uint8Array.from({ length }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state >>> 24;
  });
}

describe('wire codec', () => {
  test.each([
    ['numbers that JSON has no word for', [NaN, Infinity, -Infinity, -0, 0, 1.5, Number.MIN_VALUE, Number.MAX_VALUE]],
    ['texts', ['', 'Åsa “Zoë” ⁻ 😀', '\u2028', '$bytes', '\u0000']],
    ['plain values', [null, true, false]],
    ['empty things', { list: [], object: {}, bytes: new Uint8Array(0), floats: new Float64Array(0) }],
    ['bytes', Uint8Array.from([0, 1, 127, 128, 254, 255])],
    ['floats', Float64Array.from([NaN, -0, 0, Infinity, -Infinity, 736.8, 5e-324])],
    ['nested', { a: [{ b: { c: [Uint8Array.of(1, 2, 3), { d: Float64Array.of(1.25) }] } }] }],
    ['an object that looks like a tagged value', { $bytes: 'AAEC' }],
    ['an object that looks like tagged floats, nested twice', { $object: { $object: { $floats: 'x' } } }],
    ['an object with a tag and another key', { $bytes: 'not base64', other: 1 }],
    ['a tag holding bytes', { $number: Uint8Array.of(9) }],
    ['bytes that are line feeds and look like JSON', [Uint8Array.of(10, 10), new TextEncoder().encode('{"$bytes": 1}\n'), '\n']],
    ['keys that are numbers, which stand first whatever the order', { b: Uint8Array.of(1), 7: Uint8Array.of(2, 2), a: Uint8Array.of(3) }],
  ])('brings back %s', (_name, value) => {
    expect(roundTrip(value)).toStrictEqual(value);
    expect(valueOfText(valueToText(value))).toStrictEqual(value);
  });

  test('tells -0 from 0', () => {
    expect(Object.is(roundTrip(-0), -0)).toBe(true);
    expect(Object.is(roundTrip(0), 0)).toBe(true);
    expect(Object.is((roundTrip(Float64Array.of(-0)) as Float64Array)[0], -0)).toBe(true);
  });

  test('leaves undefined fields out and takes a Buffer for bytes', () => {
    expect(roundTrip({ a: undefined, b: 1 })).toStrictEqual({ b: 1 });
    expect(roundTrip(Buffer.from([1, 2, 3]))).toStrictEqual(Uint8Array.of(1, 2, 3));
  });

  test('brings back part of a larger buffer only', () => {
    const whole = Float64Array.of(1, 2, 3, 4);
    expect(roundTrip(whole.subarray(1, 3))).toStrictEqual(Float64Array.of(2, 3));
  });

  test('a key named __proto__ stays a key', () => {
    const arrived = decodeText('{"__proto__": {"polluted": {"$number": "NaN"}}, "x": 1}') as Record<string, unknown>;
    expect(Object.getPrototypeOf(arrived)).toBe(Object.prototype);
    expect(Object.keys(arrived)).toEqual(['__proto__', 'x']);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  test.each([
    ['not JSON', '{'],
    ['bytes that are no number', '{"$bytes": "AAEC"}\nabc'],
    ['fewer than no bytes', '[{"$bytes": -1}]\nabc'],
    ['part of a byte', '{"$bytes": 1.5}\nabc'],
    ['bytes that did not come', '{"$bytes": 4}\nabc'],
    ['bytes without a line feed', '{"$bytes": 1}'],
    ['bytes given out twice', '[{"$bytes": 3}, {"$bytes": 3}]\nabc'],
    ['bytes left over', '{"$bytes": 2}\nabc'],
    ['bytes behind a value that has none', '1\nabc'],
    ['half a float', '{"$floats": 3}\nabc'],
    ['a number of another name', '{"$number": "12"}'],
    ['an object tag without object', '{"$object": []}'],
  ])('refuses %s', (_name, text) => {
    expect(() => decodeText(text)).toThrow();
  });

  test.each([['a date', new Date(0)], ['a map', new Map()], ['single floats', Float32Array.of(1)]])('refuses to send %s', (_name, value) => {
    expect(() => encodeWire({ value })).toThrow(/cannot carry/);
  });

  test.each([
    ['bytes that are no text', '{"$bytes": 5}'],
    ['base64 of a wrong length', '{"$bytes": "AAA"}'],
    ['a character outside the alphabet', '{"$bytes": "A*AA"}'],
    ['padding in the middle', '{"$bytes": "A=AA"}'],
    ['too much padding', '{"$bytes": "A==="}'],
    ['half a float', '{"$floats": "AAAA"}'],
  ])('a kept text with %s is refused', (_name, text) => {
    expect(() => valueOfText(text)).toThrow();
  });

  test('refuses what is not UTF-8', () => {
    expect(() => decodeWire(Uint8Array.of(0x22, 0xff, 0x22))).toThrow();
  });

  test('what it brings back is its own: the body may be used again', () => {
    const body = Buffer.from(encodeWire({ bytes: Uint8Array.of(1, 2, 3) }));
    const { bytes } = decodeWire(body) as { bytes: Uint8Array };
    body.fill(0);
    expect(bytes).toStrictEqual(Uint8Array.of(1, 2, 3));
    expect(bytes.buffer.byteLength).toBe(3);
  });

  test('its base64 is that of everyone, at every length', () => {
    for (let length = 0; length < 70; length++) {
      const bytes = seededBytes(length, length + 1);
      expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
      expect(fromBase64(Buffer.from(bytes).toString('base64'))).toStrictEqual(bytes);
    }
  });

  test('large bytes take time in proportion: 16 times the size, not 256 times the time', () => {
    const small = seededBytes(1 << 20, 7);
    const large = seededBytes(1 << 24, 7);
    const took = (bytes: Uint8Array): number => {
      const started = performance.now();
      expect((roundTrip({ bytes }) as { bytes: Uint8Array }).bytes.length).toBe(bytes.length);
      return performance.now() - started;
    };
    took(small);
    const one = Math.max(took(small), 2);
    expect(took(large)).toBeLessThan(one * 100);
  });
});

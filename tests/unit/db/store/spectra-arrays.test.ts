import { expect, test } from 'vitest';
import { curveDigest, packFloats, unpackFloats } from '../../../../db/store/spectra-arrays.ts';

test('values are little-endian Float64 and come back bit for bit', () => {
  const values = Float64Array.of(1, -0, 1e-310, Number.NaN, Number.POSITIVE_INFINITY, 572.6);
  const packed = packFloats(values);
  // IEEE 754: 1.0 is 3ff0000000000000, lowest byte first.
  expect([...packed.subarray(0, 8)]).toEqual([0, 0, 0, 0, 0, 0, 0xf0, 0x3f]);
  const back = unpackFloats(packed);
  expect(back.length).toBe(values.length);
  back.forEach((value, index) => expect(Object.is(value, values[index])).toBe(true));
});

test('part of a larger array is packed as that part, and unaligned bytes are read', () => {
  const packed = packFloats(new Float64Array([1, 2, 3, 4]).subarray(1, 3));
  expect(packed.byteLength).toBe(16);
  const shifted = Buffer.concat([Buffer.from([9]), packed]).subarray(1);
  expect([...unpackFloats(shifted)]).toEqual([2, 3]);
});

test('the digest is over x, then y', () => {
  const x = packFloats(Float64Array.of(1));
  const y = packFloats(Float64Array.of(2));
  expect(curveDigest(x, y)).not.toBe(curveDigest(y, x));
  expect(curveDigest(x, y)).toMatch(/^[0-9a-f]{64}$/);
});

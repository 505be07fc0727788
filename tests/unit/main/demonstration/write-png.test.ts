import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { crc32 } from '../../../../app/custody/crc32.ts';
import { writePng } from '../../../../main/demonstration/write-png.ts';

/** A reader of its own: chunks with their check values, rows filtered by the row above. */
function readPng(bytes: Uint8Array): { width: number; height: number; rgb: number[]; comment: string } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks = new Map<string, Uint8Array>();
  for (let at = 8; at < bytes.length;) {
    const length = view.getUint32(at);
    const type = Buffer.from(bytes.subarray(at + 4, at + 8)).toString('latin1');
    expect(view.getUint32(at + 8 + length)).toBe(crc32(bytes.subarray(at + 4, at + 8 + length)));
    chunks.set(type, bytes.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  const head = chunks.get('IHDR')!;
  const size = new DataView(head.buffer, head.byteOffset, head.byteLength);
  const [width, height] = [size.getUint32(0), size.getUint32(4)];
  expect([...head.subarray(8)]).toEqual([8, 2, 0, 0, 0]);
  const data = inflateSync(chunks.get('IDAT')!);
  const row = width * 3;
  const rgb: number[] = [];
  for (let y = 0; y < height; y += 1) {
    expect(data[y * (row + 1)]).toBe(2);
    for (let i = 0; i < row; i += 1) rgb.push((data[y * (row + 1) + 1 + i]! + (y === 0 ? 0 : rgb[(y - 1) * row + i]!)) & 0xff);
  }
  return { width, height, rgb, comment: Buffer.from(chunks.get('tEXt')!).toString('latin1') };
}

describe('pictures as PNG', () => {
  test('the check value is that of the standard', () => {
    // Check value of CRC-32 over "123456789": ISO 3309 / ITU-T V.42 polynomial, as published with every implementation.
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });

  test('what was drawn comes back, with its comment', () => {
    const rgb = Uint8Array.from({ length: 5 * 3 * 3 }, (_, i) => (i * 37) % 256);
    const back = readPng(writePng({ width: 5, height: 3, rgb }, 'SIMULATED'));
    expect(back).toEqual({ width: 5, height: 3, rgb: [...rgb], comment: 'Comment\0SIMULATED' });
  });

  test('a picture that does not fill its size is a fault', () => {
    expect(() => writePng({ width: 2, height: 2, rgb: new Uint8Array(5) }, '')).toThrow(RangeError);
  });
});

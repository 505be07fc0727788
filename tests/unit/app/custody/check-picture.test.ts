import { describe, expect, test } from 'vitest';
import { checkPicture, DAMAGED_PICTURE, NOT_A_PICTURE } from '../../../../app/custody/check-picture.ts';
import { crc32 } from '../../../../app/custody/crc32.ts';
import { writePng } from '../../../../main/demonstration/write-png.ts';

const png = writePng({ width: 5, height: 4, rgb: Uint8Array.from({ length: 60 }, (_, i) => i * 4) }, 'made for a test');

/** The same file with another size in its header, whose check value fits. */
function pngOfSize(width: number, height: number): Uint8Array {
  const bytes = png.slice();
  const view = new DataView(bytes.buffer);
  view.setUint32(16, width);
  view.setUint32(20, height);
  view.setUint32(29, crc32(bytes.subarray(12, 29)));
  return bytes;
}

/** Frame of a JPEG file: comment, size, one scan with a stuffed byte and a restart in it, end. The points themselves mean nothing. */
function jpeg({ width = 4, height = 3, scan = [0x12, 0xff, 0x00, 0x34, 0xff, 0xd0, 0x56], end = [0xff, 0xd9] } = {}): Uint8Array {
  return Uint8Array.of(
    0xff, 0xd8, 0xff, 0xfe, 0, 4, 0xff, 0xd9, 0xff, 0xff, 0xc0, 0, 11, 8, height >> 8, height & 0xff, width >> 8, width & 0xff, 1, 1, 0x11, 0,
    0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, ...scan, ...end);
}

describe('PNG', () => {
  test('a whole one, also with something after its end', () => {
    expect(checkPicture(png, 'image/png')).toBeNull();
    expect(checkPicture(Uint8Array.of(...png, 1, 2, 3), 'image/png')).toBeNull();
    expect(checkPicture(Uint8Array.of(9, 9, 9, ...png).subarray(3), 'image/png')).toBeNull();
  });
  test('cut anywhere', () => {
    for (let length = 8; length < png.length; length += 1) expect([length, checkPicture(png.subarray(0, length), 'image/png')]).toEqual([length, DAMAGED_PICTURE]);
  });
  test('one byte changed anywhere after the signature', () => {
    for (let at = 8; at < png.length; at += 1) {
      const bent = png.slice();
      bent[at]! ^= 0x10;
      expect([at, checkPicture(bent, 'image/png')]).toEqual([at, DAMAGED_PICTURE]);
    }
  });
  test('no points, or no size', () => {
    expect(checkPicture(pngOfSize(0, 4), 'image/png')).toBe(DAMAGED_PICTURE);
    expect(checkPicture(Uint8Array.of(...png.subarray(0, 33), ...png.subarray(png.length - 12)), 'image/png')).toBe(DAMAGED_PICTURE);
  });
  test('more than 100 megapixels', () => {
    expect(checkPicture(pngOfSize(10_000, 10_000), 'image/png')).toBeNull();
    expect(checkPicture(pngOfSize(10_001, 10_000), 'image/png')).toBe('This picture has 101 megapixels; at most 100 are kept. Save it smaller, then add it again.');
  });
});

describe('JPEG', () => {
  test('a whole one, also with something after its end', () => {
    expect(checkPicture(jpeg(), 'image/jpeg')).toBeNull();
    expect(checkPicture(jpeg({ end: [0xff, 0xd9, 7, 7] }), 'image/jpeg')).toBeNull();
  });
  test('cut anywhere; an end mark inside a comment is none', () => {
    const whole = jpeg();
    for (let length = 3; length < whole.length; length += 1) expect([length, checkPicture(whole.subarray(0, length), 'image/jpeg')]).toEqual([length, DAMAGED_PICTURE]);
  });
  test('no size, or a segment that is no segment', () => {
    expect(checkPicture(jpeg({ height: 0 }), 'image/jpeg')).toBe(DAMAGED_PICTURE);
    expect(checkPicture(Uint8Array.of(0xff, 0xd8, 0xff, 0xfe, 0, 0, 0xff, 0xd9), 'image/jpeg')).toBe(DAMAGED_PICTURE);
    expect(checkPicture(Uint8Array.of(0xff, 0xd8, 0xff, 0xd9), 'image/jpeg')).toBe(DAMAGED_PICTURE);
  });
  test('more than 100 megapixels', () => {
    expect(checkPicture(jpeg({ width: 20_000, height: 6_000 }), 'image/jpeg')).toContain('120 megapixels');
  });
});

test('another kind than the stated one', () => {
  expect(checkPicture(png, 'image/jpeg')).toBe(NOT_A_PICTURE);
  expect(checkPicture(jpeg(), 'image/png')).toBe(NOT_A_PICTURE);
  expect(checkPicture(new Uint8Array(), 'image/png')).toBe(NOT_A_PICTURE);
});

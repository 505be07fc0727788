import { beforeAll, describe, expect, test } from 'vitest';
import { checkPicture, DAMAGED_PICTURE, NOT_A_PICTURE } from '../../../../app/custody/check-picture.ts';
import { tiffSize } from '../../../../app/custody/tiff-size.ts';
import { loadSharp } from '../../../../main/images/load-sharp.ts';

describe('a TIFF file', () => {
  let whole: Uint8Array;
  beforeAll(async () => { whole = new Uint8Array(await loadSharp()({ create: { width: 40, height: 30, channels: 3, background: '#369' } }).tiff({ compression: 'lzw' }).toBuffer()); });

  test('written by a library is taken, with its size, in strips and in tiles', async () => {
    expect(tiffSize(whole)).toEqual({ width: 40, height: 30 });
    expect(checkPicture(whole, 'image/tiff')).toBeNull();
    const tiled = new Uint8Array(await loadSharp()({ create: { width: 300, height: 200, channels: 3, background: '#369' } }).tiff({ tile: true, tileWidth: 64, tileHeight: 64 }).toBuffer());
    expect(tiffSize(tiled)).toEqual({ width: 300, height: 200 });
  });

  test('in either byte order is read', () => {
    const view = new DataView(new ArrayBuffer(8 + 2 + 4 * 12 + 4 + 3));
    view.setUint32(0, 0x4d4d002a);
    view.setUint32(4, 8);
    view.setUint16(8, 4);
    const entries: readonly (readonly [tag: number, type: number, value: number])[] = [[256, 3, 1], [257, 3, 1], [273, 4, 62], [279, 4, 3]];
    entries.forEach(([tag, type, value], i) => {
      const at = 10 + 12 * i;
      view.setUint16(at, tag); view.setUint16(at + 2, type); view.setUint32(at + 4, 1);
      if (type === 3) view.setUint16(at + 8, value); else view.setUint32(at + 8, value);
    });
    expect(checkPicture(new Uint8Array(view.buffer), 'image/tiff')).toBeNull();
  });

  test('that is cut off anywhere is refused, and never read beyond its end', () => {
    for (let length = 4; length < whole.byteLength; length += 7) expect([DAMAGED_PICTURE]).toContain(checkPicture(whole.subarray(0, length), 'image/tiff'));
    expect(checkPicture(new TextEncoder().encode('no picture at all'), 'image/tiff')).toBe(NOT_A_PICTURE);
  });
});

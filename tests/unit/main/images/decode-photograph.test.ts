import { deflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { crc32 } from '../../../../app/custody/crc32.ts';
import { photographPiece } from '../../../../app/images/simulate/photograph-piece.ts';
import { simulatedPiece } from '../../../../app/images/simulate/simulated-piece.ts';
import { decodePhotograph, previewPhotograph, readPhotographFacts } from '../../../../main/images/decode-photograph.ts';
import { loadSharp } from '../../../../main/images/load-sharp.ts';

const piece = simulatedPiece({ width: 96, height: 64, count: 3, seed: 1 });
const eight = photographPiece(piece, { light: 'long-wave' });
const sixteen = photographPiece(piece, { light: 'long-wave', bits: 16 });
const raw = ({ width, height, data }: typeof eight) => loadSharp()(data, { raw: { width, height, channels: 3 } });
const wide = () => raw(sixteen).toColourspace('rgb16');

describe('decodePhotograph', () => {
  test('always decodes with the same library', () => {
    expect(loadSharp().versions).toHaveProperty('emscripten');
  });

  test.each([
    ['png', () => raw(eight).png()], ['tiff', () => raw(eight).tiff({ compression: 'lzw' })], ['tiff', () => raw(eight).tiff({ compression: 'deflate', tile: true })],
  ] as const)('reads %s of 8 bits without loss', async (format, write) => {
    const decoded = await decodePhotograph(await write().toBuffer());
    expect(decoded).toMatchObject({ ok: true, value: { facts: { format, bits: 8, colours: 'rgb', width: 96, height: 64 }, photograph: { width: 96, height: 64, most: 255 } } });
    expect(decoded.ok && Buffer.from(decoded.value.photograph.data).equals(Buffer.from(eight.data))).toBe(true);
  });

  test.each([['png', () => wide().png()], ['tiff', () => wide().tiff({ compression: 'none' })]] as const)('reads %s of 16 bits without loss', async (format, write) => {
    const decoded = await decodePhotograph(await write().toBuffer());
    expect(decoded).toMatchObject({ ok: true, value: { facts: { format, bits: 16 }, photograph: { most: 65535 } } });
    expect(decoded.ok && Array.from(decoded.value.photograph.data)).toEqual(Array.from(sixteen.data));
  });

  test('turns a photograph upright and says its upright size', async () => {
    const decoded = await decodePhotograph(await raw(eight).withMetadata({ orientation: 6 }).png().toBuffer());
    expect(decoded).toMatchObject({ ok: true, value: { facts: { width: 64, height: 96, exif: { orientation: 6 } }, photograph: { width: 64, height: 96 } } });
    // Orientation 6: the first row of the file is the right-hand column, read downwards.
    const at = (x: number, y: number) => (decoded.ok ? decoded.value.photograph.data[3 * (y * 64 + x)] : undefined);
    expect(at(63, 40)).toBe(eight.data[3 * 40]);
    expect(at(63 - 30, 48)).toBe(eight.data[3 * (30 * 96 + 48)]);
  });

  test('reads the exposure of a JPEG', async () => {
    const bytes = await raw(eight).withExif({ IFD0: { Make: 'Invented', Model: 'One' }, IFD2: { ExposureTime: '1/4', FNumber: '56/10', ISOSpeedRatings: '400', DateTimeOriginal: '2026:03:04 10:11:12' } }).jpeg({ quality: 95 }).toBuffer();
    expect(await readPhotographFacts(bytes)).toMatchObject({ ok: true, value: { format: 'jpeg', exif: { exposureSeconds: 0.25, fNumber: 5.6, iso: 400, takenAt: '2026-03-04 10:11:12', camera: 'Invented One' } } });
    const decoded = await decodePhotograph(bytes);
    expect(decoded.ok && Math.max(...Array.from(decoded.value.photograph.data, (value, i) => Math.abs(value - eight.data[i]!)))).toBeLessThan(40);
  });

  test('reads a grey picture as three equal channels', async () => {
    const decoded = await decodePhotograph(await raw(eight).toColourspace('b-w').png().toBuffer());
    expect(decoded).toMatchObject({ ok: true, value: { facts: { colours: 'grey' } } });
    const data = decoded.ok ? decoded.value.photograph.data : [];
    expect(data).toHaveLength(3 * 96 * 64);
    expect(data[300]).toBe(data[301]);
  });

  test('scales down for looking, converts printing colours only for that', async () => {
    const cmyk = await raw(eight).toColourspace('cmyk').jpeg().toBuffer();
    expect(await decodePhotograph(cmyk)).toEqual({ ok: false, error: { code: 'printing-colours' } });
    expect(await decodePhotograph(cmyk, { use: 'look', longSide: 48 })).toMatchObject({ ok: true, value: { photograph: { width: 48, height: 32 } } });
    const preview = await previewPhotograph(await wide().tiff().toBuffer(), 48);
    expect(preview.ok && (await readPhotographFacts(preview.value.jpeg))).toMatchObject({ ok: true, value: { format: 'jpeg', width: 48, height: 32 } });
  });
});

/** A PNG whose header claims a size, with hardly any points behind it. */
function claimingPng(width: number, height: number): Buffer {
  const chunk = (type: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const frame = Buffer.alloc(8);
    frame.writeUInt32BE(data.length, 0);
    frame.writeUInt32BE(crc32(body), 4);
    return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), chunk('IHDR', header), chunk('IDAT', deflateSync(Buffer.alloc(64))), chunk('IEND', Buffer.alloc(0))]);
}

describe('what is refused', () => {
  test('a small file that claims gigapixels, before anything is decoded', async () => {
    expect(await decodePhotograph(claimingPng(60_000, 50_000))).toEqual({ ok: false, error: { code: 'too-large', megapixels: 3000 } });
  });

  test('a shape that no photograph has', async () => {
    expect(await decodePhotograph(claimingPng(50_000, 3))).toEqual({ ok: false, error: { code: 'odd-shape', width: 50_000, height: 3 } });
  });

  test.each([['jpeg', () => raw(eight).jpeg()], ['png', () => raw(eight).png()], ['tiff', () => raw(eight).tiff({ compression: 'none' })]] as const)('a %s that ends too early', async (_kind, write) => {
    const whole = await write().toBuffer();
    expect(await decodePhotograph(whole.subarray(0, Math.floor(0.6 * whole.length)))).toEqual({ ok: false, error: { code: 'damaged' } });
  });

  test('what is no picture', async () => {
    expect(await decodePhotograph(new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg" width="10" height="10"/>'))).toEqual({ ok: false, error: { code: 'not-a-picture' } });
    expect(await decodePhotograph(new Uint8Array(0))).toEqual({ ok: false, error: { code: 'not-a-picture' } });
  });
});

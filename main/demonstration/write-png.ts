import { crc32 } from '../../app/custody/crc32.ts';
import { deflateSync } from 'node:zlib';

/** A picture in red, green and blue, 8 bits each, row by row from the top left. */
export type Picture = { readonly width: number; readonly height: number; readonly rgb: Uint8Array };

const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
const BIT_DEPTH = 8;
const TRUECOLOUR = 2;
/** Each row as the difference from the row above: smooth pictures shrink most that way. */
const FILTER_UP = 2;

function chunk(type: string, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + data.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  bytes.set(new TextEncoder().encode(type), 4);
  bytes.set(data, 8);
  view.setUint32(8 + data.length, crc32(bytes.subarray(4, 8 + data.length)));
  return bytes;
}

function header({ width, height }: Picture): Uint8Array {
  const bytes = new Uint8Array(13);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  bytes.set([BIT_DEPTH, TRUECOLOUR], 8);
  return bytes;
}

function text(keyword: string, content: string): Uint8Array {
  return new TextEncoder().encode(`${keyword}\0${content}`);
}

function filtered({ width, height, rgb }: Picture): Uint8Array {
  const row = width * 3;
  const out = new Uint8Array(height * (row + 1));
  for (let y = 0; y < height; y += 1) {
    out[y * (row + 1)] = FILTER_UP;
    for (let i = 0; i < row; i += 1) out[y * (row + 1) + 1 + i] = rgb[y * row + i]! - (y === 0 ? 0 : rgb[(y - 1) * row + i]!);
  }
  return out;
}

/**
 * The bytes of a PNG file (ISO/IEC 15948:2004). Throws where the picture does not fill its size.
 * @param comment written into the file, ASCII
 */
export function writePng(picture: Picture, comment: string): Uint8Array {
  if (picture.rgb.length !== picture.width * picture.height * 3) throw new RangeError('writePng: the picture does not fill its size');
  const parts = [SIGNATURE, chunk('IHDR', header(picture)), chunk('tEXt', text('Comment', comment)), chunk('IDAT', deflateSync(filtered(picture), { level: 9 })), chunk('IEND', new Uint8Array())];
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

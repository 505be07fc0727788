import { crc32 } from './crc32.ts';
import { tiffSize } from './tiff-size.ts';

export const PICTURE_KINDS = ['image/png', 'image/jpeg', 'image/tiff'] as const;
export type PictureKind = (typeof PICTURE_KINDS)[number];

/** The kind of a stored picture; what was stored before TIFF was taken is one of the other two. */
export const pictureKind = (mediaType: string): PictureKind => PICTURE_KINDS.find((kind) => kind === mediaType) ?? 'image/jpeg';

/** Largest picture that is kept, in millions of points: beyond what a window can show. Common practice, no source. */
const MOST_MEGAPIXELS = 100;

export const NOT_A_PICTURE = 'This file is not the PNG, JPEG or TIFF picture it says it is.';
export const DAMAGED_PICTURE = 'This picture is damaged or cut off before its end: copy it again from the camera, or take it again.';

const tooLarge = (megapixels: number): string =>
  `This picture has ${Math.ceil(megapixels)} megapixels; at most ${MOST_MEGAPIXELS} are kept. Save it smaller, then add it again.`;

type Size = { readonly width: number; readonly height: number };

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const JPEG = [0xff, 0xd8, 0xff];
/** Little-endian and big-endian. */
const TIFF = [[0x49, 0x49, 0x2a, 0x00], [0x4d, 0x4d, 0x00, 0x2a]];

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** Length, type and check value around the data of a chunk. */
const CHUNK_FRAME = 12;
const IHDR_LENGTH = 13;

/** Size of a PNG file whose chunks are whole up to the last (ISO/IEC 15948:2004, clauses 5.3 and 5.6); null where they are not. */
function pngSize(bytes: Uint8Array): Size | null {
  const view = viewOf(bytes);
  let size: Size | null = null;
  let holdsPoints = false;
  for (let at = PNG.length; at + CHUNK_FRAME <= bytes.length;) {
    const length = view.getUint32(at);
    const end = at + CHUNK_FRAME + length;
    if (end > bytes.length || crc32(bytes.subarray(at + 4, end - 4)) !== view.getUint32(end - 4)) return null;
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (size === null) {
      if (type !== 'IHDR' || length !== IHDR_LENGTH) return null;
      size = { width: view.getUint32(at + 8), height: view.getUint32(at + 12) };
    }
    if (type === 'IDAT') holdsPoints = true;
    if (type === 'IEND') return holdsPoints ? size : null;
    at = end;
  }
  return null;
}

const MARK = 0xff;
const END_OF_IMAGE = 0xd9;
const START_OF_SCAN = 0xda;

/** Markers that stand alone, without a length: TEM, RST0 to RST7, SOI. */
const standsAlone = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);
/** SOF0 to SOF15; C4, C8 and CC among them mean something else. */
const startsFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

/** Where coded points end: at the next marker that is neither a stuffed byte nor a restart. Past the end where there is none. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(MARK, from); at !== -1 && at + 1 < bytes.length; at = bytes.indexOf(MARK, at + 1)) {
    const next = bytes[at + 1]!;
    if (next !== 0 && next !== MARK && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

/** Size of a JPEG file whose segments are whole up to its end marker (ITU-T T.81, annex B); null where they are not. */
function jpegSize(bytes: Uint8Array): Size | null {
  const view = viewOf(bytes);
  let size: Size | null = null;
  let holdsPoints = false;
  let at = 2;
  while (at + 1 < bytes.length) {
    if (bytes[at] !== MARK) return null;
    const marker = bytes[at + 1]!;
    // Any number of fill bytes may stand before a marker.
    if (marker === MARK) { at += 1; continue; }
    if (marker === END_OF_IMAGE) return holdsPoints ? size : null;
    if (standsAlone(marker)) { at += 2; continue; }
    if (at + 4 > bytes.length) return null;
    const end = at + 2 + view.getUint16(at + 2);
    if (end > bytes.length || end < at + 4) return null;
    if (startsFrame(marker) && size === null && end >= at + 9) size = { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    if (marker === START_OF_SCAN) holdsPoints = true;
    at = marker === START_OF_SCAN ? endOfScan(bytes, end) : end;
  }
  return null;
}

const KINDS: Readonly<Record<PictureKind, { readonly starts: readonly (readonly number[])[]; sizeOf(bytes: Uint8Array): Size | null }>> = {
  'image/png': { starts: [PNG], sizeOf: pngSize }, 'image/jpeg': { starts: [JPEG], sizeOf: jpegSize }, 'image/tiff': { starts: TIFF, sizeOf: tiffSize },
};

/**
 * Why bytes can't be kept as a picture of the stated kind, as a sentence for a person, or null where they can.
 * Looks at the frame of the file, not at its points: a picture that ends where its kind says it ends, and is no larger than a window can show.
 */
export function checkPicture(bytes: Uint8Array, kind: PictureKind): string | null {
  const { starts, sizeOf } = KINDS[kind];
  if (!starts.some((start) => start.every((value, i) => bytes[i] === value))) return NOT_A_PICTURE;
  const size = sizeOf(bytes);
  if (size === null || size.width === 0 || size.height === 0) return DAMAGED_PICTURE;
  const megapixels = size.width * size.height / 1e6;
  return megapixels > MOST_MEGAPIXELS ? tooLarge(megapixels) : null;
}

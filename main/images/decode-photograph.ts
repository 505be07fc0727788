import type { ImageRefusal } from '../../app/images/image-refusal.ts';
import type { Photograph } from '../../app/images/photograph.ts';
import type { PhotographFacts } from '../../app/images/photograph-facts.ts';
import { MOST_MEGAPIXELS, refuseSize } from '../../app/images/size-limits.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { freeDecoderMemory } from './free-decoder-memory.ts';
import { loadSharp } from './load-sharp.ts';
import { readExif } from './read-exif.ts';

type Pipeline = ReturnType<ReturnType<typeof loadSharp>>;

/**
 * For measuring, the decoder's slightest doubt ends the reading: a photograph whose points end early is filled up with grey, and grey would
 * be measured. For looking, only an error does.
 */
const open = (bytes: Uint8Array, use: 'measure' | 'look'): Pipeline => loadSharp()(bytes, { limitInputPixels: MOST_MEGAPIXELS * 1e6, failOn: use === 'measure' ? 'warning' : 'error' });
// The header alone is looked at whatever size it claims: the refusal then names the size.
const openHeader = (bytes: Uint8Array): Pipeline => loadSharp()(bytes, { limitInputPixels: false });

const FORMATS: Readonly<Record<string, PhotographFacts['format']>> = { jpeg: 'jpeg', png: 'png', tiff: 'tiff' };

/** Colour spaces as the decoder names them. */
const coloursOf = (space: string): PhotographFacts['colours'] => (space === 'cmyk' ? 'cmyk' : space === 'b-w' || space === 'grey16' ? 'grey' : 'rgb');
const WIDE_DEPTHS = ['ushort', 'short', 'uint', 'int', 'float', 'double'];

/** What the file's header says; no point is decoded. */
export async function readPhotographFacts(bytes: Uint8Array): Promise<Result<PhotographFacts, ImageRefusal>> {
  if (bytes.byteLength === 0) return err({ code: 'not-a-picture' });
  const header = await openHeader(bytes).metadata().catch(() => null);
  const format = header === null ? undefined : FORMATS[header.format];
  if (header === null || format === undefined || !(header.width > 0) || !(header.height > 0)) return err({ code: looksLikePicture(bytes) ? 'damaged' : 'not-a-picture' });
  const refused = refuseSize(header.width, header.height);
  if (refused !== null) return err(refused);
  const exif = await readExif(bytes);
  const { width, height } = header.autoOrient;
  return ok({ format, width, height, bits: WIDE_DEPTHS.includes(header.depth) ? 16 : 8, colours: coloursOf(header.space), exif: { ...exif, orientation: header.orientation ?? 1 } });
}

/** First bytes of the three kinds; TIFF in both byte orders. */
const STARTS = [[0xff, 0xd8, 0xff], [0x89, 0x50, 0x4e, 0x47], [0x49, 0x49, 0x2a, 0], [0x4d, 0x4d, 0, 0x2a]];
const looksLikePicture = (bytes: Uint8Array): boolean => STARTS.some((start) => start.every((value, i) => bytes[i] === value));

export type DecodeOptions = {
  /** At most this many points along the longer side; coarser means faster. */
  readonly longSide?: number;
  /** For looking, printing colours are converted and small damage is passed over; not for measuring. */
  readonly use?: 'measure' | 'look';
};

/**
 * A copy of what the decoder gave, and the decoder's memory given back. Its own result lies in memory that it uses again, so it may not
 * leave the thread. (Its toUint8Array, which copies by itself, never frees the original in the WebAssembly form of 0.35.5: measured.)
 */
async function takeOver(data: Uint8Array): Promise<Uint8Array<ArrayBuffer>> {
  const own = new Uint8Array(data);
  await freeDecoderMemory();
  return own;
}

/** A photograph's points, upright and in sRGB, in the file's own depth. */
export async function decodePhotograph(bytes: Uint8Array, { longSide, use = 'measure' }: DecodeOptions = {}): Promise<Result<{ facts: PhotographFacts; photograph: Photograph }, ImageRefusal>> {
  const read = await readPhotographFacts(bytes);
  if (!read.ok) return read;
  const facts = read.value;
  if (facts.colours === 'cmyk' && use === 'measure') return err({ code: 'printing-colours' });
  const wide = facts.bits === 16;
  const scaled = longSide === undefined || longSide >= Math.max(facts.width, facts.height);
  const upright = open(bytes, use).autoOrient();
  const sized = scaled ? upright : upright.resize({ width: longSide, height: longSide, fit: 'inside' });
  try {
    const { data, info } = await sized.removeAlpha().toColourspace(wide ? 'rgb16' : 'srgb').raw({ depth: wide ? 'ushort' : 'uchar' }).toBuffer({ resolveWithObject: true });
    if (info.channels !== 3) return err({ code: 'damaged' });
    const own = await takeOver(data);
    const points = wide ? new Uint16Array(own.buffer) : own;
    return ok({ facts, photograph: { width: info.width, height: info.height, most: wide ? 65535 : 255, data: points } });
  } catch {
    return err({ code: 'damaged' });
  }
}

/** JPEG of a photograph, upright, for looking at: for kinds that a window can't draw itself, and for small pictures of large ones. */
export async function previewPhotograph(bytes: Uint8Array, longSide: number): Promise<Result<{ facts: PhotographFacts; jpeg: Uint8Array<ArrayBuffer> }, ImageRefusal>> {
  const read = await readPhotographFacts(bytes);
  if (!read.ok) return read;
  try {
    const jpeg = await open(bytes, 'look').autoOrient().resize({ width: longSide, height: longSide, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#000' }).toColourspace('srgb').jpeg({ quality: 88 }).toBuffer();
    return ok({ facts: read.value, jpeg: await takeOver(jpeg) });
  } catch {
    return err({ code: 'damaged' });
  }
}

import { ok, type Result } from '../result.ts';
import { refusal } from './refusal.ts';
import type { ReadError } from './spectrum-file.ts';

/**
 * Header of an SPC file, in the open layout that its makers published ("SPC file format", 1997): version bytes 4Bh (little-endian)
 * and 4Ch (big-endian) with 512 bytes, 4Dh (old) with 256 bytes, of which the last 32 already are the first subheader.
 */
export type SpcHeader = {
  readonly old: boolean;
  readonly littleEndian: boolean;
  /** Ordinates of 16 bits instead of 32. */
  readonly short: boolean;
  readonly multiple: boolean;
  /** Abscissae are listed, once or for each curve. */
  readonly listedX: boolean;
  readonly ownX: boolean;
  readonly experiment: number;
  /** Power of two of whole-number ordinates; FLOAT_EXPONENT: they are floating-point numbers. */
  readonly exponent: number;
  readonly points: number;
  readonly firstX: number;
  readonly lastX: number;
  /** Null where the file does not say (old form). */
  readonly curves: number | null;
  readonly xType: number;
  readonly yType: number;
  /** Own words for the axes, where the file has them. */
  readonly labels: readonly string[];
  readonly memo: string;
  readonly entries: readonly (readonly [string, string])[];
  /** Where the log begins; 0: none. */
  readonly logAt: number;
  /** Where the data begin. */
  readonly dataAt: number;
};

export const FLOAT_EXPONENT = -128;
const NEW_LITTLE = 0x4b;
const NEW_BIG = 0x4c;
const OLD = 0x4d;
export const NEW_HEADER_BYTES = 512;
export const OLD_HEADER_BYTES = 256;
const FLAG = { short: 1, multiple: 4, labels: 32, ownX: 64, listedX: 128 } as const;

/** Characters up to the first zero, as Latin 1, without what does not print. */
export function spcText(bytes: Uint8Array, from: number, length: number): string {
  let text = '';
  for (const byte of bytes.subarray(from, from + length)) {
    if (byte === 0) break;
    text += byte < 32 ? ' ' : String.fromCharCode(byte);
  }
  return text.trim();
}

const two = (n: number): string => String(n).padStart(2, '0');
const dateWords = (year: number, month: number, day: number, hour: number, minute: number): string =>
  year === 0 || month < 1 || month > 12 || day < 1 ? '' : `${year}-${two(month)}-${two(day)} ${two(hour)}:${two(minute)}`;

function labelsAt(bytes: Uint8Array, from: number): string[] {
  const text = bytes.subarray(from, from + 30);
  const parts: string[] = [];
  let at = 0;
  for (let k = 0; k < 3 && at < text.length; k++) {
    const end = text.indexOf(0, at);
    parts.push(spcText(text, at, (end < 0 ? text.length : end) - at));
    at = end < 0 ? text.length : end + 1;
  }
  return parts;
}

function readNew(bytes: Uint8Array, view: DataView, littleEndian: boolean): SpcHeader {
  const flags = bytes[0]!;
  const date = view.getUint32(32, littleEndian);
  const factor = view.getFloat32(260, littleEndian);
  return {
    old: false, littleEndian, short: (flags & FLAG.short) !== 0, multiple: (flags & FLAG.multiple) !== 0, listedX: (flags & FLAG.listedX) !== 0, ownX: (flags & FLAG.ownX) !== 0,
    experiment: bytes[2]!, exponent: view.getInt8(3), points: view.getUint32(4, littleEndian), firstX: view.getFloat64(8, littleEndian), lastX: view.getFloat64(16, littleEndian),
    curves: view.getUint32(24, littleEndian), xType: bytes[28]!, yType: bytes[29]!, labels: (flags & FLAG.labels) !== 0 ? labelsAt(bytes, 218) : [],
    memo: spcText(bytes, 88, 130), logAt: view.getUint32(248, littleEndian), dataAt: NEW_HEADER_BYTES,
    entries: [
      ['date', dateWords(date >>> 20, (date >>> 16) & 15, (date >>> 11) & 31, (date >>> 6) & 31, date & 63)], ['resolution', spcText(bytes, 36, 9)], ['instrument', spcText(bytes, 45, 9)],
      ['memo', spcText(bytes, 88, 130)], ['method file', spcText(bytes, 264, 48)], ['concentration factor', factor === 0 || factor === 1 ? '' : String(factor)],
    ],
  };
}

function readOld(bytes: Uint8Array, view: DataView): SpcHeader {
  const flags = bytes[0]!;
  return {
    old: true, littleEndian: true, short: (flags & FLAG.short) !== 0, multiple: (flags & FLAG.multiple) !== 0, listedX: (flags & FLAG.listedX) !== 0, ownX: (flags & FLAG.ownX) !== 0,
    experiment: 0, exponent: view.getInt16(2, true), points: view.getFloat32(4, true), firstX: view.getFloat32(8, true), lastX: view.getFloat32(12, true), curves: null,
    xType: bytes[16]!, yType: bytes[17]!, labels: (flags & FLAG.labels) !== 0 ? labelsAt(bytes, 194) : [], memo: spcText(bytes, 64, 130), logAt: 0, dataAt: OLD_HEADER_BYTES - 32,
    entries: [
      ['date', dateWords(view.getUint16(18, true) & 0xfff, bytes[20]!, bytes[21]!, bytes[22]!, bytes[23]!)], ['resolution', spcText(bytes, 24, 8)],
      ['scans', String(view.getUint16(34, true) || '')], ['memo', spcText(bytes, 64, 130)],
    ],
  };
}

/** Reads the header. Error 'cut-off' where the file is shorter than one. */
export function readSpcHeader(bytes: Uint8Array): Result<SpcHeader, ReadError> {
  const old = bytes[1] === OLD;
  if (bytes.byteLength < (old ? OLD_HEADER_BYTES : NEW_HEADER_BYTES)) return refusal('cut-off', 'The file ends within its header: it was cut off. Copy it again from the instrument.');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return ok(old ? readOld(bytes, view) : readNew(bytes, view, bytes[1] === NEW_LITTLE));
}

const isCode = (code: number, last: number, others: readonly number[]): boolean => code <= last || others.includes(code);
/** Greatest abscissa that an instrument's axis has, whatever its unit (judgement). */
const GREATEST_X = 1e12;

/**
 * Whether bytes are an SPC file: its version byte and a header that makes sense. Two letters alone would not do: archives, pictures
 * and texts may begin with the same byte.
 */
export function looksLikeSpc(bytes: Uint8Array): boolean {
  const version = bytes[1];
  if (version !== NEW_LITTLE && version !== NEW_BIG && version !== OLD) return false;
  const read = readSpcHeader(bytes);
  if (!read.ok) return false;
  const { ownX, listedX, points, firstX, lastX, xType, yType, exponent, curves, old } = read.value;
  if (ownX ? !listedX || old : !(points >= 0 && points <= 0xfffffff)) return false;
  if (!isCode(xType, 30, [255]) || !isCode(yType, 26, [128, 129, 130, 131]) || Math.abs(exponent) > -FLOAT_EXPONENT) return false;
  if (curves !== null && (curves === 0 || curves > 0xffffff)) return false;
  const axisSaid = [firstX, lastX].every((x) => Number.isFinite(x) && Math.abs(x) < GREATEST_X && (x === 0 || Math.abs(x) > 1 / GREATEST_X));
  return axisSaid || listedX;
}

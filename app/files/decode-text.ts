import { ok, type Result } from '../result.ts';
import { FILE_LIMITS } from './reader-defaults.ts';
import { refusal } from './refusal.ts';
import type { ReadError } from './spectrum-file.ts';

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** First bytes of files that are often dropped by mistake, with what to call them. */
const KNOWN_KINDS: readonly (readonly [readonly number[], string])[] = [
  [[0x25, 0x50, 0x44, 0x46], 'a PDF document'],
  [[0x50, 0x4b, 0x03, 0x04], 'a ZIP archive or a spreadsheet'],
  [[0x89, 0x50, 0x4e, 0x47], 'a PNG picture'],
  [[0xff, 0xd8, 0xff], 'a JPEG picture'],
  [[0xd0, 0xcf, 0x11, 0xe0], 'an office document'],
  [[0x1f, 0x8b], 'a gzip archive'],
  [[0x89, 0x48, 0x44, 0x46], 'an HDF5 container'],
  [[0x49, 0x49, 0x2a, 0x00], 'a TIFF picture'],
  [[0x4d, 0x4d, 0x00, 0x2a], 'a TIFF picture'],
];

const startsWith = (bytes: Uint8Array, head: readonly number[]): boolean => head.every((b, i) => bytes[i] === b);

/** Without the NULs and the Ctrl-Z with which some instruments fill the last sector. */
function withoutPadding(bytes: Uint8Array): Uint8Array {
  let end = bytes.length;
  while (end > 0 && (bytes[end - 1] === 0 || bytes[end - 1] === 0x1a)) end -= 1;
  return bytes.subarray(0, end);
}

/** UTF-16 without a byte-order mark: ASCII text has a NUL at every second byte, all on one side. */
function guessUtf16(bytes: Uint8Array): Encoding | undefined {
  const pairs = Math.min(bytes.length >> 1, 2048);
  let even = 0;
  let odd = 0;
  for (let i = 0; i < pairs; i += 1) {
    if (bytes[2 * i] === 0) even += 1;
    if (bytes[2 * i + 1] === 0) odd += 1;
  }
  if (pairs < 2) return undefined;
  if (odd > 0.7 * pairs && even < 0.02 * pairs) return 'utf-16le';
  if (even > 0.7 * pairs && odd < 0.02 * pairs) return 'utf-16be';
  return undefined;
}

/** Share of control characters among the first bytes; text has none but tab, line ends, form feed and Ctrl-Z. */
function looksBinary(bytes: Uint8Array): boolean {
  const n = Math.min(bytes.length, 65536);
  let control = 0;
  for (let i = 0; i < n; i += 1) {
    const b = bytes[i]!;
    if (b === 0) return true;
    if (b < 32 && !(b >= 9 && b <= 13) && b !== 0x1a) control += 1;
  }
  return control > 0.01 * n && control > 2;
}

function decode8Bit(bytes: Uint8Array): { text: string; encoding: Encoding } {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'utf-8' };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'windows-1252' };
  }
}

/**
 * The text of a file: UTF-8 with or without mark, UTF-16 of either order with or without mark, else Windows-1252
 * (which has Latin-1's letters). Refuses empty, too large and binary files.
 */
export function decodeText(bytes: Uint8Array): Result<{ text: string; encoding: Encoding }, ReadError> {
  if (bytes.length === 0) return refusal('empty-file', 'The file is empty. Export it again from the instrument.');
  if (bytes.length > FILE_LIMITS.maxBytes) {
    return refusal('too-large', `The file has ${Math.round(bytes.length / 1048576)} MB, more than a spectrum can have (${FILE_LIMITS.maxBytes / 1048576} MB). Export the single spectrum.`);
  }
  const kind = KNOWN_KINDS.find(([head]) => startsWith(bytes, head));
  if (kind) return refusal('not-a-spectrum', `The file is ${kind[1]}, not a spectrum. Export the data as JCAMP-DX or as text.`);

  let wide: Encoding | undefined;
  if (startsWith(bytes, [0xff, 0xfe])) wide = 'utf-16le';
  else if (startsWith(bytes, [0xfe, 0xff])) wide = 'utf-16be';
  else wide = guessUtf16(bytes);
  if (wide) {
    const text = new TextDecoder(wide).decode(bytes).replace(/[\u0000\u001a]+$/, '');
    return text.includes('\u0000') || text.trim() === ''
      ? refusal('binary-file', 'The file holds binary data, not text. Export the spectrum as JCAMP-DX or as text.')
      : ok({ text, encoding: wide });
  }
  const body = withoutPadding(bytes);
  if (body.length === 0) return refusal('empty-file', 'The file holds only filler bytes and no data. Export it again from the instrument.');
  if (looksBinary(body)) return refusal('binary-file', 'The file holds binary data, not text. Export the spectrum as JCAMP-DX or as text.');
  return ok(decode8Bit(body));
}

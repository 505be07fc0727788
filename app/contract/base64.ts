/** RFC 4648 base64 with padding, in plain code: the core has neither Buffer nor btoa, and both ends of a call use the same. */

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const PAD = 0x3d;
const INVALID = 255;

const SIX_BITS_TO_CHARACTER = new TextEncoder().encode(ALPHABET);
const CHARACTER_TO_SIX_BITS = new Uint8Array(256).fill(INVALID);
SIX_BITS_TO_CHARACTER.forEach((character, sixBits) => { CHARACTER_TO_SIX_BITS[character] = sixBits; });

/** Text of the bytes, without line breaks. */
export function toBase64(bytes: Uint8Array): string {
  const { length } = bytes;
  const text = new Uint8Array(Math.ceil(length / 3) * 4);
  let to = 0;
  let from = 0;
  for (; from + 2 < length; from += 3) {
    const three = (bytes[from]! << 16) | (bytes[from + 1]! << 8) | bytes[from + 2]!;
    text[to++] = SIX_BITS_TO_CHARACTER[three >> 18]!;
    text[to++] = SIX_BITS_TO_CHARACTER[(three >> 12) & 63]!;
    text[to++] = SIX_BITS_TO_CHARACTER[(three >> 6) & 63]!;
    text[to++] = SIX_BITS_TO_CHARACTER[three & 63]!;
  }
  if (from < length) {
    const two = (bytes[from]! << 16) | ((bytes[from + 1] ?? 0) << 8);
    text[to++] = SIX_BITS_TO_CHARACTER[two >> 18]!;
    text[to++] = SIX_BITS_TO_CHARACTER[(two >> 12) & 63]!;
    text[to++] = from + 1 < length ? SIX_BITS_TO_CHARACTER[(two >> 6) & 63]! : PAD;
    text[to++] = PAD;
  }
  return new TextDecoder().decode(text);
}

/** Bytes of a base64 text. Throws where a character, the padding or the length is wrong: half-decoded bytes are worse than none. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const characters = new TextEncoder().encode(text);
  const { length } = characters;
  if (length === 0) return new Uint8Array(0);
  if (length % 4 !== 0) throw new Error('base64: length is not a multiple of four');
  const padding = characters[length - 1] !== PAD ? 0 : characters[length - 2] !== PAD ? 1 : 2;
  const bytes = new Uint8Array((length / 4) * 3 - padding);
  const significant = length - padding;
  let to = 0;
  let bits = 0;
  let seen = 0;
  for (let at = 0; at < significant; at++) {
    const sixBits = CHARACTER_TO_SIX_BITS[characters[at]!]!;
    if (sixBits === INVALID) throw new Error('base64: a character outside the alphabet');
    bits = (bits << 6) | sixBits;
    if (++seen === 4) {
      bytes[to++] = (bits >> 16) & 255;
      bytes[to++] = (bits >> 8) & 255;
      bytes[to++] = bits & 255;
      bits = 0;
      seen = 0;
    }
  }
  if (seen === 3) {
    bytes[to++] = (bits >> 10) & 255;
    bytes[to++] = (bits >> 2) & 255;
  } else if (seen === 2) {
    bytes[to++] = (bits >> 4) & 255;
  }
  return bytes;
}

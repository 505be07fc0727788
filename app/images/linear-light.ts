import { decodeSrgb } from '../colour/srgb.ts';

const tableOf = (most: number): Float32Array => Float32Array.from({ length: most + 1 }, (_, value) => decodeSrgb(value / most));

const EIGHT = tableOf(255);
let sixteen: Float32Array | null = null;

/** Linear light, 0 to 1, of each encoded value (IEC 61966-2-1). */
export function linearTable(most: 255 | 65535): Float32Array {
  if (most === 255) return EIGHT;
  sixteen ??= tableOf(65535);
  return sixteen;
}

/** From this encoded value on a channel counts as clipped: the last step of 8 bits, in 16 bits what rounds to it. */
export const clippedFrom = (most: 255 | 65535): number => (most === 255 ? 255 : 65535 - 128);

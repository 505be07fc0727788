import { createHash } from 'node:crypto';
import { endianness } from 'node:os';

const HOST_IS_LITTLE = endianness() === 'LE';

/** Values as little-endian Float64 bytes, whatever the machine. */
export function packFloats(values: Float64Array): Buffer {
  const bytes = Buffer.from(new Float64Array(values).buffer);
  return HOST_IS_LITTLE ? bytes : bytes.swap64();
}

/** The reverse of packFloats; copies, so that the values are aligned. */
export function unpackFloats(bytes: Uint8Array): Float64Array {
  const copy = Buffer.alloc(bytes.byteLength);
  copy.set(bytes);
  const ordered = HOST_IS_LITTLE ? copy : copy.swap64();
  return new Float64Array(ordered.buffer.slice(ordered.byteOffset, ordered.byteOffset + ordered.byteLength));
}

/** SHA-256 over the bytes of x, then of y. */
export function curveDigest(x: Uint8Array, y: Uint8Array): string {
  return createHash('sha256').update(x).update(y).digest('hex');
}

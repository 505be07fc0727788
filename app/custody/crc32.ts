/** Reversed polynomial of ISO 3309, as PNG uses it (ISO/IEC 15948:2004, annex D). node:zlib offers crc32 only from Node 22 on. */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k += 1) c = (c & 1) === 1 ? POLYNOMIAL ^ (c >>> 1) : c >>> 1;
  return c;
});

/** Check value over bytes; of the ASCII digits 1 to 9 it is cbf43926. `before`: the value over what came before them, so that a long file is done in pieces. */
export function crc32(bytes: Uint8Array, before = 0): number {
  let c = before ^ 0xffffffff;
  for (const byte of bytes) c = TABLE[(c ^ byte) & 0xff]! ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}

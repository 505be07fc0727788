import { inflateSync } from 'node:zlib';

const SIGNATURE = 0x774f4646;
const HEADER = 44;
const ENTRY = 20;
const align4 = (n: number): number => (n + 3) & ~3;

/**
 * Unpacks a WOFF 1.0 file (W3C Recommendation, 13 December 2012) into the TrueType file it was made from. The font library reads outlines of empty
 * letters such as the space beyond the end of an unpacked table and fails when that table stands alone; in a whole file it does not.
 * Throws when the bytes are not WOFF: the files are the program's own.
 */
export function woffToSfnt(woff: Buffer): Buffer {
  if (woff.length < HEADER || woff.readUInt32BE(0) !== SIGNATURE) throw new Error('not a WOFF file');
  const count = woff.readUInt16BE(12);
  const tables = Array.from({ length: count }, (_, i) => {
    const at = HEADER + i * ENTRY;
    const offset = woff.readUInt32BE(at + 4);
    const packed = woff.readUInt32BE(at + 8);
    const length = woff.readUInt32BE(at + 12);
    const bytes = woff.subarray(offset, offset + packed);
    return { tag: woff.subarray(at, at + 4), checksum: woff.readUInt32BE(at + 16), length, bytes: packed < length ? inflateSync(bytes) : bytes };
  });
  const directory = 12 + count * 16;
  const total = tables.reduce((sum, table) => sum + align4(table.length), directory);
  // Room behind the last table, for the reading beyond the end described above.
  const sfnt = Buffer.alloc(total + 16);
  const power = Math.floor(Math.log2(count));
  sfnt.writeUInt32BE(woff.readUInt32BE(4), 0);
  sfnt.writeUInt16BE(count, 4);
  sfnt.writeUInt16BE(2 ** power * 16, 6);
  sfnt.writeUInt16BE(power, 8);
  sfnt.writeUInt16BE(count * 16 - 2 ** power * 16, 10);
  let at = directory;
  tables.forEach((table, i) => {
    const entry = 12 + i * 16;
    table.tag.copy(sfnt, entry);
    sfnt.writeUInt32BE(table.checksum, entry + 4);
    sfnt.writeUInt32BE(at, entry + 8);
    sfnt.writeUInt32BE(table.length, entry + 12);
    table.bytes.copy(sfnt, at);
    at += align4(table.length);
  });
  return sfnt;
}

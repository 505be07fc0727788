import { crc32, deflateSync } from 'node:zlib';

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/** PNG (ISO/IEC 15948) chunk: length, type, data, CRC-32 over type and data. */
function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

/** A true-colour picture of a bright round spot on a dark ground, as a glowing stone looks. */
export function makePng(width: number, height: number, rgb: readonly [number, number, number] = [90, 140, 255]): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const rows = Buffer.alloc(height * (1 + 3 * width));
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const glow = Math.exp(-(((x - width / 2) ** 2 + (y - height / 2) ** 2) / (0.06 * width * height)));
      rows.set(rgb.map((channel) => Math.round(12 + (channel - 12) * glow)), y * (1 + 3 * width) + 1 + 3 * x);
    }
  }
  return new Uint8Array(Buffer.concat([SIGNATURE, chunk('IHDR', header), chunk('IDAT', deflateSync(rows)), chunk('IEND', Buffer.alloc(0))]));
}

import { utf8ToBytes } from '@noble/hashes/utils.js';

/** A file in a zip as both of its headers state it. `modified`: date and time of MS-DOS in one number. `at`: where its local header begins. */
export type ZipMember = { readonly name: string; readonly packed: number; readonly size: number; readonly crc: number; readonly deflated: boolean; readonly modified: number; readonly at: number };

/** Signatures and fixed lengths of a zip's headers (PKWARE APPNOTE 6.3.10, 4.3.7, 4.3.12 and 4.3.16). */
export const LOCAL = { signature: 0x04034b50, bytes: 30 } as const;
export const CENTRAL = { signature: 0x02014b50, bytes: 46 } as const;
export const END = { signature: 0x06054b50, bytes: 22 } as const;

/** Version 2.0: deflate and folders (APPNOTE 4.4.3). */
const VERSION = 20;
/** Names are UTF-8 (APPNOTE 4.4.4, bit 11). */
export const UTF8_NAMES = 0x0800;
export const DEFLATE = 8;
const STORED = 0;

/** What the archive says of itself at its end, so that a damaged bundle is still known for one. */
export const BUNDLE_REMARK = 'Culet bundle';

/** Without the extension for more (APPNOTE 4.3.9.2), which not every program reads: files of an archive, and bytes of it. */
export const MAX_MEMBERS = 65_000;
export const MAX_ARCHIVE_BYTES = 0xffff_ffff - 64 * 1024 * 1024;

/** An instant (UTC ISO 8601) as MS-DOS writes it, in UTC since a zip knows no zone: to two seconds, between 1980 and 2107. */
export function dosTime(instant: string): number {
  const date = new Date(instant);
  const year = Math.min(127, Math.max(0, date.getUTCFullYear() - 1980));
  const day = (year << 9) | ((date.getUTCMonth() + 1) << 5) | date.getUTCDate();
  const time = (date.getUTCHours() << 11) | (date.getUTCMinutes() << 5) | (date.getUTCSeconds() >> 1);
  return ((day << 16) | time) >>> 0;
}

/** The fields that both headers have in common, from the version on. */
function writeCommon(view: DataView, at: number, { deflated, modified, crc, packed, size }: ZipMember, nameBytes: number): void {
  view.setUint16(at, VERSION, true);
  view.setUint16(at + 2, UTF8_NAMES, true);
  view.setUint16(at + 4, deflated ? DEFLATE : STORED, true);
  view.setUint32(at + 6, modified, true);
  view.setUint32(at + 10, crc, true);
  view.setUint32(at + 14, packed, true);
  view.setUint32(at + 18, size, true);
  view.setUint16(at + 22, nameBytes, true);
}

/** What stands before a file's bytes. There is one way only to write it. */
export function localHeader(member: ZipMember): Uint8Array<ArrayBuffer> {
  const name = utf8ToBytes(member.name);
  const header = new Uint8Array(LOCAL.bytes + name.byteLength);
  const view = new DataView(header.buffer);
  view.setUint32(0, LOCAL.signature, true);
  writeCommon(view, 4, member, name.byteLength);
  header.set(name, LOCAL.bytes);
  return header;
}

function centralHeader(member: ZipMember): Uint8Array<ArrayBuffer> {
  const name = utf8ToBytes(member.name);
  const header = new Uint8Array(CENTRAL.bytes + name.byteLength);
  const view = new DataView(header.buffer);
  view.setUint32(0, CENTRAL.signature, true);
  view.setUint16(4, VERSION, true);
  writeCommon(view, 6, member, name.byteLength);
  view.setUint32(42, member.at, true);
  header.set(name, CENTRAL.bytes);
  return header;
}

/** Everything after the last file: the directory of the archive, which begins at `at`, and its end. There is one way only to write it. */
export function directoryOf(members: readonly ZipMember[], at: number): Uint8Array<ArrayBuffer> {
  const headers = members.map(centralHeader);
  const length = headers.reduce((sum, header) => sum + header.byteLength, 0);
  const remark = utf8ToBytes(BUNDLE_REMARK);
  const whole = new Uint8Array(length + END.bytes + remark.byteLength);
  let next = 0;
  for (const header of headers) {
    whole.set(header, next);
    next += header.byteLength;
  }
  const view = new DataView(whole.buffer, length);
  view.setUint32(0, END.signature, true);
  view.setUint16(8, members.length, true);
  view.setUint16(10, members.length, true);
  view.setUint32(12, length, true);
  view.setUint32(16, at, true);
  view.setUint16(20, remark.byteLength, true);
  whole.set(remark, length + END.bytes);
  return whole;
}

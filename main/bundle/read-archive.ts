import type { BundleFault, BundleFaultCode } from '../../app/bundle/bundle-verdict.ts';
import { unsafeName } from '../../app/bundle/member-name.ts';
import { CENTRAL, DEFLATE, directoryOf, END, LOCAL, localHeader, MAX_MEMBERS, type ZipMember } from '../../app/bundle/zip-form.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { ByteSource } from './byte-source.ts';

/** One file: twice the largest that a casebook keeps is 128 MB; documents of large cases may be longer. */
export const MAX_MEMBER_BYTES = 512 * 1024 * 1024;
/** All files together. */
const MAX_UNPACKED_BYTES = 16 * 1024 ** 3;
/** Deflate makes at most 1032 bytes of one (zlib, “technical details”); more is a lie or a trap. */
const MAX_GROWTH = 1040;

export type Archive = { readonly members: readonly ZipMember[]; /** Where the directory begins. */ readonly directoryAt: number };

const ENCRYPTED = 0x0001;
const UTF8_NAMES = 0x0800;

export const fault = (code: BundleFaultCode, path: string, sentence: string): BundleFault => ({ code, path, sentence });
const bad = (code: BundleFaultCode, path: string, sentence: string): { readonly ok: false; readonly error: BundleFault } => err(fault(code, path, sentence));

/** A name as a person may see it: what is wrong with it must not work on the terminal. */
const shown = (name: string): string =>
  JSON.stringify(name.length > 80 ? `${name.slice(0, 80)}…` : name).replace(/[\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0;

/** The file whose local header begins at `at`. Every field is read as hostile. */
function memberAt(source: ByteSource, at: number): Result<ZipMember, BundleFault> {
  const header = source.read(at, LOCAL.bytes);
  if (header.byteLength < LOCAL.bytes) return bad('cut-off', '', 'The archive ends in the middle of a header.');
  const view = new DataView(header.buffer, header.byteOffset, header.byteLength);
  const nameBytes = source.read(at + LOCAL.bytes, view.getUint16(26, true));
  if (nameBytes.byteLength < view.getUint16(26, true)) return bad('cut-off', '', 'The archive ends in the middle of a name.');
  let name: string;
  try {
    name = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(nameBytes);
  } catch {
    return bad('unsafe-name', '', 'A file in the archive has a name that is not text.');
  }
  const why = unsafeName(name);
  if (why !== null) return bad('unsafe-name', '', `The name ${shown(name)} is not safe to unpack: ${why}.`);
  const flags = view.getUint16(6, true);
  const method = view.getUint16(8, true);
  if ((flags & ENCRYPTED) !== 0) return bad('encrypted', name, `${shown(name)} is encrypted; a bundle never is.`);
  if (flags !== UTF8_NAMES || (method !== 0 && method !== DEFLATE) || view.getUint16(28, true) !== 0) return bad('unsupported', name, `${shown(name)} is packed in a way that Culet does not write.`);
  const member: ZipMember = { name, deflated: method === DEFLATE, modified: view.getUint32(10, true), crc: view.getUint32(14, true), packed: view.getUint32(18, true), size: view.getUint32(22, true), at };
  if (member.size > MAX_MEMBER_BYTES) return bad('too-large', name, `${shown(name)} would unpack to more than ${MAX_MEMBER_BYTES / 1024 ** 2} MB.`);
  if (member.size > member.packed * MAX_GROWTH) return bad('too-large', name, `${shown(name)} states a size that its packed bytes can’t hold.`);
  if (!member.deflated && member.size !== member.packed) return bad('headers-differ', name, `${shown(name)} states two sizes that contradict each other.`);
  if (!sameBytes(localHeader(member).subarray(0, LOCAL.bytes), header)) return bad('headers-differ', name, `The header of ${shown(name)} is not as Culet writes it.`);
  if (dataAt(member) + member.packed > source.size) return bad('cut-off', name, `The archive ends in the middle of ${shown(name)}.`);
  return ok(member);
}

/** Where a file's packed bytes begin. */
export const dataAt = (member: ZipMember): number => member.at + LOCAL.bytes + Buffer.byteLength(member.name, 'utf8');

const signatureAt = (source: ByteSource, at: number): number | null => {
  const four = source.read(at, 4);
  return four.byteLength < 4 ? null : new DataView(four.buffer, four.byteOffset, 4).getUint32(0, true);
};

/** Why the directory is not the one that belongs to the files; the entry that differs is named where there is one. */
function directoryFault(found: Uint8Array, members: readonly ZipMember[], expected: Uint8Array): BundleFault {
  const view = new DataView(found.buffer, found.byteOffset, found.byteLength);
  let at = 0;
  for (const { name } of members) {
    if (at + CENTRAL.bytes > found.byteLength) return fault('cut-off', '', 'The archive ends in the middle of its directory.');
    if (view.getUint32(at, true) !== CENTRAL.signature) break;
    const length = CENTRAL.bytes + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    // The upper half of the attributes is the mode of Unix; 0xa is a symbolic link (POSIX, sys/stat.h).
    if (view.getUint32(at + 38, true) >>> 28 === 0xa) return fault('link', name, `${shown(name)} is a link to another place; a bundle holds files only.`);
    if ((view.getUint16(at + 8, true) & ENCRYPTED) !== 0) return fault('encrypted', name, `The directory says that ${shown(name)} is encrypted; a bundle never is.`);
    if (!sameBytes(found.subarray(at, at + length), expected.subarray(at, at + length))) return fault('headers-differ', name, `The directory of the archive says of ${shown(name)} something else than stands before the file itself.`);
    at += length;
  }
  if (found.byteLength > expected.byteLength && sameBytes(found.subarray(0, expected.byteLength), expected)) return fault('foreign-bytes', '', 'There are bytes after the end of the archive.');
  if (found.byteLength < expected.byteLength) return fault('cut-off', '', 'The end of the archive is missing.');
  return fault('headers-differ', '', 'The end of the archive is not as Culet writes it.');
}

/**
 * The files of an archive in the one form in which Culet writes it: header after header from the first byte, then a directory that repeats them to the
 * letter, then nothing. Anything else is a fault with its name. No content is looked at here.
 */
export function readArchive(source: ByteSource): Result<Archive, BundleFault> {
  const members: ZipMember[] = [];
  const names = new Set<string>();
  let at = 0;
  let unpacked = 0;
  for (;;) {
    const signature = signatureAt(source, at);
    if (signature === null) return bad('cut-off', '', 'The archive ends before its directory.');
    if (signature === CENTRAL.signature || (signature === END.signature && at === 0)) break;
    if (signature !== LOCAL.signature) return bad('foreign-bytes', members.at(-1)?.name ?? '', at === 0 ? 'The file does not begin as a zip does.' : `At byte ${at} stand bytes that belong to no file.`);
    if (members.length >= MAX_MEMBERS) return bad('too-many', '', `The archive holds more than ${MAX_MEMBERS} files.`);
    const member = memberAt(source, at);
    if (!member.ok) return member;
    const { name, size, packed } = member.value;
    if (names.has(name.toLowerCase())) return bad('duplicate-name', name, `Two files are named ${shown(name)}.`);
    names.add(name.toLowerCase());
    unpacked += size;
    if (unpacked > MAX_UNPACKED_BYTES) return bad('too-large', '', `The archive would unpack to more than ${MAX_UNPACKED_BYTES / 1024 ** 3} GB.`);
    members.push(member.value);
    at = dataAt(member.value) + packed;
  }
  const expected = directoryOf(members, at);
  // A directory longer than the longest that can follow is not read: what comes after it is foreign anyway.
  const found = source.read(at, Math.min(source.size - at, expected.byteLength + 1024 * 1024));
  return sameBytes(found, expected) && at + found.byteLength === source.size ? ok({ members, directoryAt: at }) : err(directoryFault(found, members, expected));
}

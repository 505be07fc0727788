import { createHash } from 'node:crypto';
import { Inflate } from 'fflate';
import type { BundleFault } from '../../app/bundle/bundle-verdict.ts';
import type { ZipMember } from '../../app/bundle/zip-form.ts';
import { crc32 } from '../../app/custody/crc32.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { ByteSource } from './byte-source.ts';
import { dataAt, fault } from './read-archive.ts';

/** Packed bytes that are looked at together: inflated they are 16 MB at most. */
const PIECE = 16 * 1024;
/** Stored bytes are not inflated and may be read in longer pieces. */
const STORED_PIECE = 1024 * 1024;

/** Thrown out of the inflater, which has no other way to be stopped. */
class TooLong extends Error {}

/**
 * Reads a file of an archive piece by piece, never more than its stated size, and hands the pieces on. Gives its SHA-256; fails where the bytes
 * can't be inflated, or do not give the size and the check value that its header states.
 */
export function readMember(source: ByteSource, member: ZipMember, take: (piece: Uint8Array) => void = () => {}): Result<string, BundleFault> {
  const hash = createHash('sha256');
  let size = 0;
  let crc = 0;
  const taken = (piece: Uint8Array): void => {
    size += piece.byteLength;
    if (size > member.size) throw new TooLong();
    crc = crc32(piece, crc);
    hash.update(piece);
    take(piece);
  };
  const wrong = (sentence: string): { readonly ok: false; readonly error: BundleFault } => err(fault('bad-content', member.name, sentence));
  try {
    if (member.deflated) inflateInto(source, member, taken);
    else for (const piece of pieces(source, member, STORED_PIECE)) taken(piece);
  } catch (thrown) {
    return wrong(thrown instanceof TooLong ? `“${member.name}” unpacks to more than the ${member.size} bytes that its header states.` : `The packed bytes of “${member.name}” are damaged.`);
  }
  if (size !== member.size || crc !== member.crc) return wrong(`“${member.name}” does not give the size and the check value that its header states.`);
  return ok(hash.digest('hex'));
}

function* pieces(source: ByteSource, member: ZipMember, length: number): Generator<Uint8Array> {
  const from = dataAt(member);
  for (let done = 0; done < member.packed; done += length) yield source.read(from + done, Math.min(length, member.packed - done));
}

function inflateInto(source: ByteSource, member: ZipMember, taken: (piece: Uint8Array) => void): void {
  const inflate = new Inflate((piece) => { taken(piece); });
  for (const piece of pieces(source, member, PIECE)) inflate.push(Uint8Array.from(piece), false);
  inflate.push(new Uint8Array(0), true);
}

/** A whole file, where it is no longer than `most` bytes: for documents. */
export function wholeMember(source: ByteSource, member: ZipMember, most: number): Result<Uint8Array, BundleFault> {
  if (member.size > most) return err(fault('too-large', member.name, `“${member.name}” is longer than ${most / 1024 ** 2} MB.`));
  const whole = new Uint8Array(member.size);
  let at = 0;
  const read = readMember(source, member, (piece) => {
    whole.set(piece, at);
    at += piece.byteLength;
  });
  return read.ok ? ok(whole) : read;
}

import { createHash } from 'node:crypto';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { PIECE_BYTES } from '../../db/store/bundle-pieces.ts';
import { aTurn } from '../../db/a-turn.ts';
import { notFound } from '../services/failures.ts';
import type { ByteSource } from './byte-source.ts';
import { MAX_MEMBER_BYTES, readArchive, type Archive } from './read-archive.ts';
import { wholeMember } from './read-member.ts';

/** A kept bundle that still gives its digest: looked into anywhere. */
export type KeptBundle = { readonly source: ByteSource; readonly archive: Archive };

/** Kept bundles as they are looked into. */
export type KeptBundles = {
  /** What stands in it, after its bytes gave its digest again; once in a session, as long as nobody else can write the file. */
  open(casebook: Casebook, id: string): Promise<Result<KeptBundle, Failure>>;
  /** One file of it, whole. */
  file(casebook: Casebook, id: string, path: string): Promise<Result<Uint8Array, Failure>>;
};

const bent = (sentence: string): { readonly ok: false; readonly error: Failure } =>
  err({ code: 'unreadable', message: `The kept bundle is no longer as it was taken in: ${sentence}`, next: 'Do not rely on it. Verify the casebook, and restore a backup in which it is sound.' });

/** SHA-256 of all of it, piece by piece, with turns for others. */
async function digestInTurns(source: ByteSource): Promise<string> {
  const hash = createHash('sha256');
  for (let at = 0; at < source.size; at += PIECE_BYTES) {
    hash.update(source.read(at, PIECE_BYTES));
    await aTurn();
  }
  return hash.digest('hex');
}

export function createKeptBundles(): KeptBundles {
  const sound = new WeakMap<Casebook, Map<string, Archive>>();

  async function open(casebook: Casebook, id: string): Promise<Result<KeptBundle, Failure>> {
    const bundle = await casebook.sealedBundles.get(id);
    if (bundle === null) return notFound('This bundle');
    const source: ByteSource = { size: bundle.size, read: (at, length) => casebook.sealedBundles.read(id, at, Math.max(0, Math.min(length, bundle.size - at))), close() { /* the casebook stays open */ } };
    const known = sound.get(casebook) ?? new Map<string, Archive>();
    sound.set(casebook, known);
    const before = known.get(id);
    if (before !== undefined) return ok({ source, archive: before });
    if (await digestInTurns(source) !== id) return bent('it does not give the SHA-256 it is kept under.');
    const archive = readArchive(source);
    if (!archive.ok) return bent(archive.error.sentence);
    known.set(id, archive.value);
    return ok({ source, archive: archive.value });
  }

  return {
    open,
    async file(casebook, id, path) {
      const opened = await open(casebook, id);
      if (!opened.ok) return opened;
      const member = opened.value.archive.members.find(({ name }) => name === path);
      if (member === undefined) return notFound('This file of the bundle');
      const read = wholeMember(opened.value.source, member, MAX_MEMBER_BYTES);
      return read.ok ? read : bent(read.error.sentence);
    },
  };
}

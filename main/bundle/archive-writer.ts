import { createHash } from 'node:crypto';
import type { Failure } from '../../app/contract/failure.ts';
import { directoryOf, dosTime, localHeader, MAX_ARCHIVE_BYTES, MAX_MEMBERS, type ZipMember } from '../../app/bundle/zip-form.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import type { ByteSink } from './byte-sink.ts';

export type WrittenMember = { readonly path: string; readonly bytes: number; readonly sha256: string };
export type NewMember = { readonly path: string; readonly bytes: Uint8Array; /** UTC, ISO 8601. */ readonly modified: string; /** Compressed already. */ readonly store?: boolean };

/** Writes a zip one file after another and holds none of them: only names, sizes and digests stay. The same files in the same order give the same bytes. */
export type ArchiveWriter = {
  add(member: NewMember): Promise<Result<WrittenMember, Failure>>;
  /** What was added so far. */
  readonly written: readonly WrittenMember[];
  /** Number and digest of the bytes so far. */
  body(): { readonly bytes: number; readonly sha256: string };
  /** Writes the directory; gives length and SHA-256 of the whole archive. */
  finish(): Promise<{ readonly bytes: number; readonly sha256: string }>;
};

const tooLarge = (): { readonly ok: false; readonly error: Failure } =>
  err({ code: 'refused', message: 'The bundle would be larger than 4 GB or hold more than 65 000 files, which not every program can unpack.', next: 'Choose a shorter period, and write several bundles.' });

/** Left for the directory and the last documents: the archive's own end must still fit. */
const SPARE_MEMBERS = 16;

export function createArchiveWriter(sink: ByteSink, pool: TaskPool, signal?: AbortSignal): ArchiveWriter {
  const members: ZipMember[] = [];
  const written: WrittenMember[] = [];
  const hash = createHash('sha256');
  let at = 0;

  async function put(bytes: Uint8Array): Promise<void> {
    hash.update(bytes);
    at += bytes.byteLength;
    await sink.write(bytes);
  }

  return {
    written,
    async add({ path, bytes, modified, store = false }) {
      const packed = await pool.run('pack-file', { bytes, store }, signal === undefined ? {} : { signal });
      if (!packed.ok) return taskFailure(packed.error);
      const { content, deflated, size, crc, sha256 } = packed.value;
      const member: ZipMember = { name: path, packed: content.byteLength, size, crc, deflated, modified: dosTime(modified), at };
      if (members.length >= MAX_MEMBERS - SPARE_MEMBERS || at + content.byteLength > MAX_ARCHIVE_BYTES) return tooLarge();
      await put(localHeader(member));
      await put(content);
      members.push(member);
      const one = { path, bytes: size, sha256 };
      written.push(one);
      return ok(one);
    },
    body: () => ({ bytes: at, sha256: hash.copy().digest('hex') }),
    async finish() {
      await put(directoryOf(members, at));
      await sink.finish();
      return { bytes: at, sha256: hash.digest('hex') };
    },
  };
}

import { createHash } from 'node:crypto';
import { deflateSync } from 'fflate';
import { crc32 } from '../../../app/custody/crc32.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

/** `store`: bytes that are compressed already, where trying again costs time and gains nothing. */
export type PackPayload = { readonly bytes: Uint8Array; readonly store: boolean };
export type PackedFile = { readonly content: Uint8Array; readonly deflated: boolean; readonly size: number; readonly crc: number; readonly sha256: string };

/** A file as it stands in a zip, with its check values. Written in this language and not by the machine's own code, so that every machine packs the same bytes. */
export const packFileTask: Task<PackPayload, PackedFile> = {
  run({ bytes, store }) {
    const deflated = store ? null : deflateSync(bytes, { level: 6 });
    const smaller = deflated !== null && deflated.byteLength < bytes.byteLength;
    return { content: smaller ? deflated : bytes, deflated: smaller, size: bytes.byteLength, crc: crc32(bytes), sha256: createHash('sha256').update(bytes).digest('hex') };
  },
  transfers: ({ content }) => buffersOf([content]),
};

import { zipSync, type Zippable } from 'fflate';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

export type ZipEntry = { readonly path: string; readonly bytes: Uint8Array };
export type ZipPayload = {
  readonly entries: readonly ZipEntry[];
  /** Time written on every entry, so that the same content gives the same archive. */
  readonly at: string;
};

/** Packs files into one zip, in the order given. */
export const zipFilesTask: Task<ZipPayload, Uint8Array> = {
  run({ entries, at }) {
    const files: Zippable = {};
    for (const entry of entries) files[entry.path] = entry.bytes;
    return zipSync(files, { level: 6, mtime: new Date(at) });
  },
  transfers: (zip) => buffersOf([zip]),
};

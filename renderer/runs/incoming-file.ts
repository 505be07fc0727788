import { MAX_FILE_BYTES } from '../../app/contract/common.ts';
import type { StatableXUnit } from '../../app/spectra/spectrum.ts';

/** A file that was dropped or picked and is not kept yet. */
export type IncomingFile = {
  readonly key: string; readonly name: string; readonly bytes: Uint8Array;
  /** The same for all files that came together. */
  readonly drop: number;
  readonly xUnit?: StatableXUnit;
  /** Key of the file for which the unit was said, where it was said for another of the same drop. */
  readonly unitFrom?: string | undefined;
};
export type Gathered = { readonly files: readonly IncomingFile[]; readonly refused: readonly string[] };

let last = 0;
let lastDrop = 0;

/** Reads what a person dropped or picked; what is too large or can't be opened is named with its reason. */
export async function gatherFiles(list: Iterable<File>): Promise<Gathered> {
  const files: IncomingFile[] = [];
  const refused: string[] = [];
  const drop = ++lastDrop;
  for (const file of list) {
    if (file.size > MAX_FILE_BYTES) {
      refused.push(`“${file.name}” is larger than 64 MB and was not taken.`);
      continue;
    }
    try {
      files.push({ key: `f${++last}`, drop, name: file.name.slice(-255), bytes: new Uint8Array(await file.arrayBuffer()) });
    } catch {
      refused.push(`“${file.name}” could not be opened: is it a folder, or was it moved?`);
    }
  }
  return { files, refused };
}

/** "12.4 kB" */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  if (bytes < 1_000_000) return `${(bytes / 1000).toFixed(1)} kB`;
  return bytes < 1_000_000_000 ? `${(bytes / 1_000_000).toFixed(1)} MB` : `${(bytes / 1_000_000_000).toFixed(2)} GB`;
}

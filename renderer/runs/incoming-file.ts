import { MAX_FILE_BYTES } from '../../app/contract/common.ts';
import type { StatableXUnit } from '../../app/spectra/spectrum.ts';

/** A file that was dropped or picked and is not kept yet. */
export type IncomingFile = { readonly key: string; readonly name: string; readonly bytes: Uint8Array; readonly xUnit?: StatableXUnit };
export type Gathered = { readonly files: readonly IncomingFile[]; readonly refused: readonly string[] };

let last = 0;

/** Reads what a person dropped or picked; what is too large or can't be opened is named with its reason. */
export async function gatherFiles(list: Iterable<File>): Promise<Gathered> {
  const files: IncomingFile[] = [];
  const refused: string[] = [];
  for (const file of list) {
    if (file.size > MAX_FILE_BYTES) {
      refused.push(`“${file.name}” is larger than 64 MB and was not taken.`);
      continue;
    }
    try {
      files.push({ key: `f${++last}`, name: file.name.slice(-255), bytes: new Uint8Array(await file.arrayBuffer()) });
    } catch {
      refused.push(`“${file.name}” could not be opened: is it a folder, or was it moved?`);
    }
  }
  return { files, refused };
}

/** "12.4 kB" */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1_000_000 ? `${(bytes / 1000).toFixed(1)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}

import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { MAX_FILE_BYTES } from '../../app/contract/common.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { CliIo } from './io.ts';

export type FileTrouble = { readonly code: 'missing' | 'empty-folder' | 'cannot-open' | 'too-large'; readonly message: string };

/** One file as it was named, with its bytes or why there are none. Bytes are read when asked for, so that a thousand files do not lie in memory at once. */
export type GatheredFile = { readonly file: string; read(): Promise<Result<Uint8Array, FileTrouble>> };

/** Stands for standard input among the names. */
export const STDIN = '-';

/** The files that the arguments name: a file, `-` for standard input, or a folder for the files in it (sorted, hidden ones and folders left out). */
export function gatherFiles(names: readonly string[], io: Pick<CliIo, 'readStdin' | 'workingFolder'>): GatheredFile[] {
  return names.flatMap((name): GatheredFile[] => {
    if (name === STDIN) return [{ file: STDIN, read: async () => withinLimit(STDIN, await io.readStdin()) }];
    const full = path.resolve(io.workingFolder, name);
    const found = statSync(full, { throwIfNoEntry: false });
    return found?.isDirectory() === true ? filesIn(name, full) : [{ file: name, read: () => Promise.resolve(readFile(name, full)) }];
  });
}

function filesIn(name: string, folder: string): GatheredFile[] {
  const entries = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => !entry.isDirectory() && !entry.name.startsWith('.'))
    .map((entry) => entry.name)
    .sort();
  if (entries.length === 0) return [{ file: name, read: () => Promise.resolve(err({ code: 'empty-folder', message: `“${name}” is a folder without files. Name the files to read.` })) }];
  return entries.map((entry) => ({ file: path.join(name, entry), read: () => Promise.resolve(readFile(path.join(name, entry), path.join(folder, entry))) }));
}

function readFile(name: string, full: string): Result<Uint8Array, FileTrouble> {
  try {
    const size = statSync(full).size;
    return size > MAX_FILE_BYTES ? tooLarge(name) : withinLimit(name, readFileSync(full));
  } catch (fault) {
    const reason = fault instanceof Error && 'code' in fault ? String(fault.code) : String(fault);
    return reason === 'ENOENT'
      ? err({ code: 'missing', message: `“${name}” is not there. Look at the spelling and at the folder you are in.` })
      : err({ code: 'cannot-open', message: `“${name}” cannot be opened (${reason}). Look whether you may read it.` });
  }
}

function withinLimit(name: string, bytes: Uint8Array): Result<Uint8Array, FileTrouble> {
  return bytes.byteLength > MAX_FILE_BYTES ? tooLarge(name) : ok(bytes);
}

function tooLarge(name: string): { readonly ok: false; readonly error: FileTrouble } {
  return err({ code: 'too-large', message: `“${name}” is larger than ${MAX_FILE_BYTES / (1024 * 1024)} MB; Culet reads instrument files up to that size.` });
}

import { createHash } from 'node:crypto';
import { statSync } from 'node:fs';
import path from 'node:path';
import { err, ok, type Result } from '../../app/result.ts';
import { writeSmallFile } from '../host/write-small-file.ts';
import type { Trouble } from './trouble.ts';

export type WrittenFile = { readonly file: string; readonly bytes: number; readonly sha256: string };

/** Writes a result as a whole or not at all; a file of that name is replaced. */
export function writeOut(name: string, content: Uint8Array, workingFolder: string): Result<WrittenFile, Trouble> {
  const file = path.resolve(workingFolder, name);
  if (statSync(file, { throwIfNoEntry: false })?.isDirectory() === true) {
    return err({ code: 'out-is-folder', message: `“${name}” is a folder.`, next: 'Name a file in it with --out.' });
  }
  try {
    writeSmallFile(file, content, String(process.pid));
  } catch (fault) {
    const reason = fault instanceof Error && 'code' in fault ? String(fault.code) : String(fault);
    return reason === 'ENOENT'
      ? err({ code: 'no-folder', message: `The folder for “${name}” is not there.`, next: 'Make it first, or name another file with --out.' })
      : err({ code: 'cannot-write', message: `“${name}” cannot be written (${reason}).`, next: 'Name a file in a folder where you may write, with --out.' });
  }
  return ok({ file: name, bytes: content.byteLength, sha256: createHash('sha256').update(content).digest('hex') });
}

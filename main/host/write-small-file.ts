import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import path from 'node:path';

/**
 * Replaces a small file as a whole: after a power cut there is the old one or the new one, never half of either.
 * Throws where the folder cannot be written. `uniqueSuffix` keeps two writers apart.
 */
export function writeSmallFile(file: string, content: string | Uint8Array, uniqueSuffix: string): void {
  const temporary = `${file}.${uniqueSuffix}.new`;
  const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
  const handle = openSync(temporary, 'wx');
  try {
    let written = 0;
    while (written < bytes.byteLength) written += writeSync(handle, bytes, written);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  try {
    renameSync(temporary, file);
  } catch (fault) {
    rmSync(temporary, { force: true });
    throw fault;
  }
  syncFolder(path.dirname(file));
}

/** Makes the rename itself durable. Windows has no such call on folders. */
function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

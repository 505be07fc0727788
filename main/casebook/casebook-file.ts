import { copyFileSync, existsSync, renameSync, rmSync } from 'node:fs';

/** SQLite's companions of an open casebook. */
const COMPANIONS = ['-wal', '-shm', '-journal'];

/** Removes a casebook file that was never finished, with its companions. */
export function discardFile(file: string): void {
  for (const name of [file, ...COMPANIONS.map((suffix) => `${file}${suffix}`)]) rmSync(name, { force: true });
}

/** Renames a closed casebook; companions left by a program that died go along, since the newest entries may be in them. */
export function moveFile(from: string, to: string): void {
  for (const suffix of ['', ...COMPANIONS]) {
    if (existsSync(`${from}${suffix}`)) renameSync(`${from}${suffix}`, `${to}${suffix}`);
  }
}

/** Copies a casebook that no program has open, with its companions. An open one is copied by its own `backup`. */
export function copyClosedFile(from: string, to: string): void {
  for (const suffix of ['', ...COMPANIONS]) {
    if (existsSync(`${from}${suffix}`)) copyFileSync(`${from}${suffix}`, `${to}${suffix}`);
  }
}

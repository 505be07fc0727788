import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { parseBackupName, type BackupFile } from './data-files.ts';

/** Backups kept of each kind: common practice, no source. */
export const KEEP_BACKUPS = 10;
/** A daily backup is made when the last one is older than this. */
export const DAILY_MS = 24 * 3_600_000;

/** Backups of one casebook, newest first. */
export function listBackups(folder: string, book: 'Casebook' | 'Demonstration'): BackupFile[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder).map(parseBackupName)
    .filter((file) => file !== null).filter((file) => file.book === book)
    .sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : a.name < b.name ? 1 : -1));
}

/** Removes the oldest of each kind beyond KEEP_BACKUPS. */
export function thinBackups(folder: string, book: 'Casebook' | 'Demonstration'): void {
  const seen = new Map<string, number>();
  for (const file of listBackups(folder, book)) {
    const count = (seen.get(file.kind) ?? 0) + 1;
    seen.set(file.kind, count);
    if (count > KEEP_BACKUPS) rmSync(join(folder, file.name), { force: true });
  }
}

/** True where no backup of the last day exists. A backup dated in the future counts for nothing. */
export function dailyIsDue(folder: string, now: Date): boolean {
  return !listBackups(folder, 'Casebook').some((file) => {
    const age = now.getTime() - Date.parse(file.at);
    return age >= -1000 && age < DAILY_MS;
  });
}

export function ensureFolder(folder: string): void {
  mkdirSync(folder, { recursive: true });
}

import { join } from 'node:path';

export type BackupKind = 'daily' | 'asked' | 'before-update' | 'before-restore';

/** Where things lie in the data folder. */
export const dataFiles = (folder: string) => ({
  own: join(folder, 'Casebook.culet'),
  demonstration: join(folder, 'Demonstration.culet'),
  backups: join(folder, 'backups'),
  state: join(folder, 'state.json'),
  /** Files that are looked at and not kept, while they are. */
  incoming: join(folder, 'incoming'),
});
export type DataFiles = ReturnType<typeof dataFiles>;

/** Backups and memory of a casebook that was named lie beside it: in the data folder they would mix with those of the laboratory's own. */
export function filesBeside(casebook: string): Pick<DataFiles, 'backups' | 'state' | 'incoming'> {
  const stem = casebook.replace(/\.culet$/, '');
  return { backups: `${stem} backups`, state: `${stem} state.json`, incoming: `${stem} incoming` };
}

const stamp = (at: Date): string => at.toISOString().replaceAll(':', '-');

/** Name of a backup: which casebook, when (UTC), why. */
export const backupName = (book: 'Casebook' | 'Demonstration', at: Date, kind: BackupKind): string => `${book} ${stamp(at)} ${kind}.culet`;

/** Name under which a file that can't be used is kept beside the new one. */
export const asideName = (file: string, at: Date): string => `${file.replace(/\.culet$/, '')} set aside ${stamp(at)}.culet`;

export type BackupFile = { readonly name: string; readonly book: string; readonly at: string; readonly kind: BackupKind };

/** What a file in the backup folder is, read from its name; null for anything else. */
export function parseBackupName(name: string): BackupFile | null {
  const match = /^(Casebook|Demonstration) (\d{4}-\d{2}-\d{2})T(\d{2})-(\d{2})-(\d{2}\.\d{3})Z (daily|asked|before-update|before-restore)\.culet$/.exec(name);
  if (!match) return null;
  return { name, book: match[1]!, at: `${match[2]!}T${match[3]!}:${match[4]!}:${match[5]!}Z`, kind: match[6]! as BackupKind };
}

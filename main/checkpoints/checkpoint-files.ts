import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { readCheckpointFile, writeCheckpointFile, type SignedCheckpoint } from '../../app/signature/checkpoint-statement.ts';
import { ensureFolder } from '../casebook/backups.ts';
import { writeSmallFile } from '../host/write-small-file.ts';

const NAME = /^.* checkpoint \d{4}-\d{2}-\d{2}\.json$/;

/** Writes the newest checkpoint of its day beside the backups, and returns the file. */
export function keepCheckpointFile(folder: string, book: string, checkpoint: SignedCheckpoint, uniqueSuffix: string): string {
  ensureFolder(folder);
  const file = path.join(folder, `${book} checkpoint ${checkpoint.statement.at.slice(0, 10)}.json`);
  writeSmallFile(file, writeCheckpointFile(checkpoint), uniqueSuffix);
  return file;
}

/** Every checkpoint beside the backups, the oldest first. What is none, or was altered, is left out: it proves nothing. */
export function keptCheckpoints(folder: string): SignedCheckpoint[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder).filter((name) => NAME.test(name)).sort()
    .map((name) => readCheckpointFile(readFileSync(path.join(folder, name), 'utf8'))).filter((read) => read.ok).map((read) => read.value);
}

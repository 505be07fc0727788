import { existsSync } from 'node:fs';
import { dataFiles } from '../casebook/data-files.ts';
import { readRemembered } from '../casebook/remembered.ts';

/** The casebook that a data folder opened last, else the laboratory's own, else the demonstration; null where there is none. */
export function lastUsedCasebook(dataFolder: string): string | null {
  const files = dataFiles(dataFolder);
  const { open } = readRemembered(files.state);
  const candidates = open === 'demonstration' ? [files.demonstration, files.own] : [files.own, files.demonstration];
  return candidates.find((file) => existsSync(file)) ?? null;
}

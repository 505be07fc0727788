import { existsSync, readFileSync, renameSync } from 'node:fs';
import { z } from 'zod';
import { writeSmallFile } from '../host/write-small-file.ts';

/** What is remembered between two starts. */
const remembered = z.object({
  /** Which casebook was open last. */
  open: z.enum(['own', 'demonstration']).nullable(),
  /** The laboratory's own casebook was there once: a lost file is then an error, never a new beginning. */
  ownKnown: z.boolean(),
  /** How far the audit ledger of the laboratory's own casebook had come when it was closed: an older copy in its place is then noticed. */
  head: z.object({ begun: z.string(), at: z.string(), audit: z.object({ seq: z.number(), hash: z.string() }) }).nullable().optional(),
});
export type Remembered = z.infer<typeof remembered>;

export const NOTHING_REMEMBERED: Remembered = { open: null, ownKnown: false };

/** What `file` says; a file that can't be read is kept aside and counts as none. */
export function readRemembered(file: string): Remembered {
  if (!existsSync(file)) return NOTHING_REMEMBERED;
  try {
    return remembered.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    renameSync(file, `${file}.unreadable`);
    return NOTHING_REMEMBERED;
  }
}

/** What `file` says, left as it is, for those who only look; null where it is not there or can't be read. */
export function lookAtRemembered(file: string): Remembered | null {
  try {
    return remembered.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    return null;
  }
}

export function writeRemembered(file: string, value: Remembered, uniqueSuffix: string): void {
  writeSmallFile(file, `${JSON.stringify(value, null, 2)}\n`, uniqueSuffix);
}

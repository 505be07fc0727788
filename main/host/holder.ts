import { readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { z } from 'zod';
import { writeSmallFile } from './write-small-file.ts';

const holder = z.object({ pid: z.number().int(), machine: z.string(), host: z.enum(['electron', 'loopback']), since: z.string() });
export type Holder = z.infer<typeof holder>;

const fileOf = (dataFolder: string): string => path.join(dataFolder, 'in-use.json');

/**
 * Leaves a note of who works on the data, for the sentence that a second program says. It guards nothing: the lock is the database's own,
 * and a note left by a program that died only matters where the database is locked all the same.
 */
export function leaveNote(dataFolder: string, host: Holder['host'], since: string): void {
  try {
    writeSmallFile(fileOf(dataFolder), JSON.stringify({ pid: process.pid, machine: os.hostname(), host, since } satisfies Holder), String(process.pid));
  } catch {
    // A comfort only.
  }
}

/** Takes the note of this process away again. */
export function takeNoteAway(dataFolder: string): void {
  if (readNote(dataFolder)?.pid === process.pid) rmSync(fileOf(dataFolder), { force: true });
}

/** A sentence about who works on the data, or nothing where no note says it. */
export function whoHolds(dataFolder: string): string {
  const note = readNote(dataFolder);
  if (note === null) return '';
  const what = note.host === 'electron' ? 'Culet’s own window' : 'a Culet that serves a browser';
  const where = note.machine === os.hostname() ? 'on this computer' : `on the computer ${note.machine}`;
  return ` It is ${what} ${where} (process ${note.pid}), since ${note.since}.`;
}

function readNote(dataFolder: string): Holder | null {
  try {
    const parsed = holder.safeParse(JSON.parse(readFileSync(fileOf(dataFolder), 'utf8')));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

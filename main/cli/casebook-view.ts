import { randomUUID } from 'node:crypto';
import { existsSync, statSync } from 'node:fs';
import path from 'node:path';
import { err, ok, type Result } from '../../app/result.ts';
import { openCasebook, type Casebook } from '../../db/open-casebook.ts';
import { programFolders } from '../host/program-folders.ts';
import { createInlinePool } from '../workers/inline-pool.ts';
import { createKeyring } from '../keys/keyring.ts';
import { createWorkServices } from '../services/work-services.ts';
import type { Call, Services } from '../services/service.ts';
import { lastUsedCasebook } from './last-used-casebook.ts';
import { snapshotCasebook, type SnapshotFault } from './snapshot-casebook.ts';
import type { Trouble } from './trouble.ts';

export type ViewOptions = {
  readonly casebook: string | undefined; readonly dataFolder: string; readonly workingFolder: string;
  /** Whoever looks checks the whole file himself: SQLite's check at opening is left out. */
  readonly unchecked?: boolean;
};

/** A casebook that is only looked at, never changed; also while the program has it open. */
export type CasebookView = {
  /** As it was named, not the copy that may have been made of it. */
  readonly file: string;
  readonly casebook: Casebook;
  readonly services: Pick<Services, 'reports.list' | 'reports.pdf' | 'reports.preview' | 'cases.bundle'>;
  close(): void;
};

/** Opens the casebook that is named, else the one last used in the data folder. */
export async function openView(options: ViewOptions): Promise<Result<CasebookView, Trouble>> {
  const file = options.casebook === undefined ? lastUsedCasebook(options.dataFolder) : path.resolve(options.workingFolder, options.casebook);
  if (file === null) return err({ code: 'no-casebook', message: `There is no casebook in ${options.dataFolder} yet.`, next: 'Name its file, or its data folder with --data.' });
  if (statSync(file, { throwIfNoEntry: false })?.isFile() !== true) {
    return err({ code: 'missing', message: `The casebook ${file} is not there${existsSync(file) ? ': this is a folder' : ''}.`, next: 'Look at the spelling and at the folder you are in.' });
  }
  const open = (name: string) => openToLook(name, options.unchecked ?? false);
  const direct = open(file);
  if (direct.ok) return ok(viewOf(file, direct.value, () => undefined));
  // In use: the other program holds the file. Cannot write: SQLite wants to lay its lock beside the file and may not.
  if (direct.error.code !== 'in-use' && direct.error.code !== 'cannot-write') return direct;
  const snapshot = await snapshotCasebook(file);
  if (!snapshot.ok) return err(snapshotTrouble(file, snapshot.error));
  const copied = open(snapshot.value.file);
  if (copied.ok) return ok(viewOf(file, copied.value, () => { snapshot.value.remove(); }));
  snapshot.value.remove();
  return err({ ...copied.error, message: copied.error.message.replaceAll(snapshot.value.file, file) });
}

function snapshotTrouble(file: string, fault: SnapshotFault): Trouble {
  return fault.code === 'never-rests'
    ? { code: 'in-use', message: `The casebook ${file} is being written all the time by another program.`, next: 'Wait until its import or backup is finished, then try again.' }
    : { code: 'cannot-copy', message: `The casebook ${file} is in use and could not be copied to look at (${fault.reason}).`, next: 'Make room on the disk of temporary files, or close the other program, then try again.' };
}

function openToLook(file: string, unchecked: boolean) {
  return openCasebook({ file, mustExist: true, readOnly: true, unchecked, migrationsFolder: programFolders().migrations, now: () => new Date(), newId: randomUUID });
}

function viewOf(file: string, casebook: Casebook, removeCopy: () => void): CasebookView {
  const services = createWorkServices({ casebook: () => casebook, signer: createKeyring(() => casebook), pool: createInlinePool(), now: () => new Date(), newId: randomUUID });
  return { file, casebook, services, close() { casebook.close(); removeCopy(); } };
}

/** The command line asks in nobody's name: it only reads. */
export function viewCall(): Call {
  return { session: { personId: null }, signal: new AbortController().signal, emit() {} };
}

/** The case of that number, written in any case of letters. */
export async function findCase({ casebook, file }: Pick<CasebookView, 'casebook' | 'file'>, number: string): Promise<Result<{ readonly id: string; readonly number: string }, Trouble>> {
  const wanted = number.trim().toUpperCase();
  const { rows } = await casebook.cases.list({ text: wanted, state: 'all', limit: 1000, offset: 0 });
  const found = rows.find((row) => row.number.toUpperCase() === wanted);
  return found === undefined
    ? err({ code: 'not-found', message: `There is no case ${number} in ${file}.`, next: 'Look at the number; it stands on the receipt and in the list of cases, for instance C-2026-0001.' })
    : ok({ id: found.id, number: found.number });
}

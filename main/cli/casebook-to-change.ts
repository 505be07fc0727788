import path from 'node:path';
import { existsSync, statSync } from 'node:fs';
import { err, ok, type Result } from '../../app/result.ts';
import { openCasebook, type Casebook } from '../../db/open-casebook.ts';
import { dataFiles, filesBeside } from '../casebook/data-files.ts';
import { lookAtRemembered, writeRemembered } from '../casebook/remembered.ts';
import { createCheckpoints } from '../checkpoints/checkpoints.ts';
import { programFolders } from '../host/program-folders.ts';
import { createKeyring, type Keyring } from '../keys/keyring.ts';
import { createNewId } from '../new-id.ts';
import { lastUsedCasebook } from './last-used-casebook.ts';
import { besideOf } from './remembered-head.ts';
import type { Trouble } from './trouble.ts';

/** A casebook that this process alone has open, to be changed by a person who signs in. */
export type CasebookToChange = {
  readonly file: string;
  readonly casebook: Casebook;
  readonly keyring: Keyring;
  newId(): string;
  /** Signs how far the ledgers have come, where the key is open; notes it beside the casebook, where the program keeps such a note; lets go of the file. */
  close(): Promise<void>;
};

export type ToChange = { readonly casebook: string | undefined; readonly dataFolder: string; readonly workingFolder: string; /** What to do instead while another program has it open. */ readonly whileInUse: string };

/** Opens the casebook that is named, else the one last used. One that is in use, older than the program, or damaged is refused, and nothing is changed in it. */
export async function openToChange({ casebook: named, dataFolder, workingFolder, whileInUse }: ToChange): Promise<Result<CasebookToChange, Trouble>> {
  const file = named === undefined ? lastUsedCasebook(dataFolder) : path.resolve(workingFolder, named);
  if (file === null) return err({ code: 'no-casebook', message: `There is no casebook in ${dataFolder} yet.`, next: 'Name its file, or its data folder with --data.' });
  if (statSync(file, { throwIfNoEntry: false })?.isFile() !== true) {
    return err({ code: 'missing', message: `The casebook ${file} is not there${existsSync(file) ? ': this is a folder' : ''}.`, next: 'Look at the spelling and at the folder you are in.' });
  }
  const newId = createNewId();
  const options = { file, mustExist: true, migrationsFolder: programFolders().migrations, now: () => new Date(), newId };
  // Looked at first: the window brings an older one up to this version, with a backup before.
  const looked = openCasebook({ ...options, readOnly: true, unchecked: true });
  if (looked.ok) looked.value.close();
  const opened = looked.ok ? openCasebook(options) : looked;
  if (!opened.ok) return err(opened.error.code === 'in-use' ? { ...opened.error, next: whileInUse } : opened.error);
  const casebook = opened.value;
  if (await casebook.laboratory.get() === null) {
    casebook.close();
    return err({ code: 'not-a-casebook', message: `The casebook ${file} is empty: no laboratory was set up in it.`, next: 'Name another file.' });
  }
  if (casebook.guardsRestored.length > 0) {
    await casebook.audit.note({ at: new Date().toISOString(), personId: null, operation: 'casebook.open' }, { subject: 'guards', content: { restored: [...casebook.guardsRestored] } });
  }
  const keyring = createKeyring(() => casebook);
  return ok({ file, casebook, keyring, newId, close: () => closeChanged(casebook, keyring, newId) });
}

async function closeChanged(casebook: Casebook, keyring: Keyring, newId: () => string): Promise<void> {
  try {
    await createCheckpoints({ manager: { current: () => casebook, besideBackups: () => besideBackups(casebook.file) }, signer: keyring, now: () => new Date(), newId }).beforeClosing();
    await noteHead(casebook, newId);
  } finally {
    keyring.forget();
    casebook.close();
  }
}

/** Where the program keeps the backups of this file. */
function besideBackups(file: string): { folder: string; book: 'Casebook' | 'Demonstration' } {
  const files = dataFiles(path.dirname(file));
  const inDataFolder = file === files.own || file === files.demonstration;
  return { folder: inDataFolder ? files.backups : filesBeside(file).backups, book: file === files.demonstration ? 'Demonstration' : 'Casebook' };
}

/** Where the program noted how far the audit ledger had come, it is noted anew: an older copy in the casebook's place is then noticed. */
async function noteHead(casebook: Casebook, newId: () => string): Promise<void> {
  const note = besideOf(casebook.file);
  const before = lookAtRemembered(note);
  const laboratory = await casebook.laboratory.get();
  if (before?.head === undefined || before.head === null || laboratory === null || before.head.begun !== laboratory.createdAt) return;
  writeRemembered(note, { ...before, head: { begun: laboratory.createdAt, at: new Date().toISOString(), audit: (await casebook.checkpoints.heads()).audit } }, newId());
}

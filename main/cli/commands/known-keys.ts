import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { bytesToHex } from '@noble/hashes/utils.js';
import { MAX_FILE_BYTES } from '../../../app/contract/common.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import type { Known } from '../../../app/signature/judge-report.ts';
import { readPublicKeyFile } from '../../../app/signature/public-key-file.ts';
import { KNOWN_TO_NOBODY, knownFor } from '../../services/known-for-reports.ts';
import { openView } from '../casebook-view.ts';
import type { CliIo } from '../io.ts';
import type { Trouble } from '../trouble.ts';

export type KnownBy = {
  /** File of the public key of the laboratory that is said to have signed. */
  readonly key: string | undefined;
  /** Casebook whose keys and reports are known; the one last used where none is named. */
  readonly casebook: string | undefined;
  readonly dataFolder: string;
};

/** A file of at most so many bytes. */
export function readWhole(name: string, workingFolder: string, most: number): Result<Uint8Array, Trouble> {
  const file = path.resolve(workingFolder, name);
  const size = statSync(file, { throwIfNoEntry: false })?.size;
  if (size === undefined) return err({ code: 'missing', message: `“${name}” is not there.`, next: 'Look at the spelling and at the folder you are in.' });
  if (size > most) return err({ code: 'too-large', message: `“${name}” is larger than ${Math.round(most / 2 ** 20)} MB.`, next: 'Check it with the common tools named in docs/verify-a-report.md.' });
  try {
    return ok(readFileSync(file));
  } catch (fault) {
    const reason = fault instanceof Error && 'code' in fault ? String(fault.code) : String(fault);
    return err({ code: 'cannot-open', message: `“${name}” can’t be read (${reason}).`, next: 'Name a file that you may read.' });
  }
}

function knownFromKey(name: string, workingFolder: string): Result<Known, Trouble> {
  const bytes = readWhole(name, workingFolder, MAX_FILE_BYTES);
  if (!bytes.ok) return bytes;
  const read = readPublicKeyFile(Buffer.from(bytes.value).toString('utf8'));
  if (!read.ok) return err({ code: 'no-key', message: read.error, next: 'Ask the laboratory for the file of its public key.' });
  const whose = read.value.laboratory.trim() === '' ? `the owner of the key in ${path.basename(name)}` : read.value.laboratory;
  return ok({ keys: [{ publicKey: bytesToHex(read.value.publicKey), whose, own: false, distrust: '' }], standing: () => null });
}

/** What the named key says; else what the named casebook knows, or the one last used, where there is one that opens. */
export async function knownBy({ key, casebook, dataFolder }: KnownBy, io: CliIo): Promise<Result<Known, Trouble>> {
  if (key !== undefined) return knownFromKey(key, io.workingFolder);
  const view = await openView({ casebook, dataFolder, workingFolder: io.workingFolder });
  if (!view.ok) return casebook === undefined ? ok(KNOWN_TO_NOBODY) : view;
  try {
    return ok(await knownFor(view.value.casebook));
  } finally {
    view.value.close();
  }
}

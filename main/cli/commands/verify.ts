import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Verification } from '../../../app/contract/casebook.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import { readCheckpointFile, type SignedCheckpoint } from '../../../app/signature/checkpoint-statement.ts';
import { keptCheckpoints } from '../../checkpoints/checkpoint-files.ts';
import type { Trouble } from '../trouble.ts';
import { openView } from '../casebook-view.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { sayTrouble } from '../trouble.ts';

export type VerifyCommand = { readonly casebook: string | undefined; readonly dataFolder: string; readonly json: boolean; /** Checkpoint files that were kept elsewhere. */ readonly checkpoints: readonly string[] };

/** Recomputes everything that can be recomputed. Fails where anything does not fit. */
export async function runVerify({ casebook, dataFolder, json, checkpoints }: VerifyCommand, io: CliIo): Promise<ExitCode> {
  const view = await openView({ casebook, dataFolder, workingFolder: io.workingFolder });
  if (!view.ok) return sayTrouble(view.error, json, io);
  try {
    const stated = readStated(checkpoints, io.workingFolder);
    if (!stated.ok) return sayTrouble(stated.error, json, io);
    const folders = [path.join(path.dirname(view.value.file), 'backups'), `${view.value.file.replace(/\.culet$/, '')} backups`];
    const outside = { kept: [...folders.flatMap(keptCheckpoints), ...stated.value], remembered: null };
    const verified = await view.value.casebook.ledgers.verify({ at: new Date().toISOString(), outside });
    if (verified === null) return EXIT.failed;
    if (json) printJson(io, { ok: verified.sound, casebook: view.value.file, ...verified });
    else io.out(inWords(view.value.file, verified));
    return verified.sound ? EXIT.done : EXIT.failed;
  } finally {
    view.value.close();
  }
}

/** The files that were named; a file that is no checkpoint is trouble, since nothing could be compared with it. */
function readStated(files: readonly string[], workingFolder: string): Result<SignedCheckpoint[], Trouble> {
  const read: SignedCheckpoint[] = [];
  for (const file of files) {
    const text = existsSync(path.resolve(workingFolder, file)) ? readFileSync(path.resolve(workingFolder, file), 'utf8') : null;
    const checkpoint = text === null ? err(`The file ${file} is not there.`) : readCheckpointFile(text);
    if (!checkpoint.ok) return err({ code: 'no-checkpoint', message: `${file}: ${checkpoint.error}`, next: 'Name a file that Culet wrote beside its backups.' });
    read.push(checkpoint.value);
  }
  return ok(read);
}

function inWords(file: string, { sound, parts }: Verification): string {
  const lines = parts.map(({ part, checked, sound: fits, fault, note }) =>
    `  ${part.padEnd(18)} ${String(checked).padStart(8)}  ${fits ? 'fits' : `DOES NOT FIT: ${fault ?? ''}`}${note === undefined ? '' : `\n${' '.repeat(30)} ${note}`}`);
  return [file, ...lines, sound ? 'Everything fits.' : 'Not everything fits; look at the entries named above.', ''].join('\n');
}

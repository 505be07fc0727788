import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Verification } from '../../../app/contract/casebook.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import { readCheckpointFile, type SignedCheckpoint } from '../../../app/signature/checkpoint-statement.ts';
import { begunAt } from '../../../db/store/laboratory.ts';
import type { Outside } from '../../../db/verify/checkpoints.ts';
import { dataFiles, filesBeside } from '../../casebook/data-files.ts';
import { keptCheckpoints } from '../../checkpoints/checkpoint-files.ts';
import { programFolders } from '../../host/program-folders.ts';
import { createVerifyWithHelpers, verifyOnThisThread, type Verify } from '../../verify/verify-with-helpers.ts';
import type { Trouble } from '../trouble.ts';
import { openView } from '../casebook-view.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { findRememberedHead, type FoundHead } from '../remembered-head.ts';
import { sayProgress } from '../say-progress.ts';
import { sayTrouble } from '../trouble.ts';

export type VerifyCommand = {
  readonly casebook: string | undefined; readonly dataFolder: string; readonly json: boolean;
  /** Checkpoint files that were kept elsewhere. */
  readonly checkpoints: readonly string[];
  /** A state.json that says how far the ledger had come when the program closed the casebook. */
  readonly remembered?: string | undefined;
  /** Progress is said also where standard error is no terminal. */
  readonly progress?: boolean;
};

/** Threads of the built program; from source, where there is no bundle, the calling thread. */
function verifier(): { readonly verify: Verify; readonly inThreads: boolean } {
  const { verifyWorker } = programFolders();
  return existsSync(verifyWorker) ? { verify: createVerifyWithHelpers({ workerFile: verifyWorker }), inThreads: true } : { verify: verifyOnThisThread, inThreads: false };
}

/** Recomputes everything that can be recomputed. Fails where anything does not fit. */
export async function runVerify({ casebook, dataFolder, json, checkpoints, remembered, progress }: VerifyCommand, io: CliIo): Promise<ExitCode> {
  const { verify, inThreads } = verifier();
  const view = await openView({ casebook, dataFolder, workingFolder: io.workingFolder, unchecked: inThreads });
  if (!view.ok) return sayTrouble(view.error, json, io);
  const { file } = view.value;
  try {
    const stated = readStated(checkpoints, io.workingFolder);
    if (!stated.ok) return sayTrouble(stated.error, json, io);
    const begun = begunAt(view.value.casebook.handle.read) ?? null;
    const found = findRememberedHead({ casebook: file, begun }, remembered, io.workingFolder);
    if (!found.ok) return sayTrouble(found.error, json, io);
    const folders = [dataFiles(path.dirname(file)).backups, filesBeside(file).backups];
    const outside: Outside = { kept: [...folders.flatMap(keptCheckpoints), ...stated.value], remembered: found.value?.head ?? null };
    const said = sayProgress(io, 'verifying', progress ?? false);
    const verified = await verify(view.value.casebook, { at: new Date().toISOString(), outside, wholeFile: inThreads, progress: (done, total) => { said.step(done, total); } });
    said.end();
    if (verified === null) return EXIT.failed;
    const compared = found.value === null ? null : { file: found.value.file, at: found.value.head.at, entry: found.value.head.audit.seq };
    if (json) printJson(io, { ok: verified.sound, casebook: file, ...verified, remembered: compared });
    else io.out(inWords(file, verified, found.value));
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

function inWords(file: string, { sound, parts }: Verification, found: FoundHead | null): string {
  const lines = parts.map(({ part, checked, sound: fits, fault, note }) =>
    `  ${part.padEnd(18)} ${String(checked).padStart(8)}  ${fits ? 'fits' : `DOES NOT FIT: ${fault ?? ''}`}${note === undefined ? '' : `\n${' '.repeat(30)} ${note}`}`);
  const compared = found === null ? [] : [`Compared with the head of the audit ledger noted at the last closing, entry ${found.head.audit.seq} on ${found.head.at} (${found.file}).`];
  return [file, ...lines, ...compared, sound ? 'Everything fits.' : 'Not everything fits; look at the entries named above.', ''].join('\n');
}

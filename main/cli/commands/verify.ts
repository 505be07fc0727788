import type { Verification } from '../../../app/contract/casebook.ts';
import { openView } from '../casebook-view.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { sayTrouble } from '../trouble.ts';

export type VerifyCommand = { readonly casebook: string | undefined; readonly dataFolder: string; readonly json: boolean };

/** Recomputes everything that can be recomputed. Fails where anything does not fit. */
export async function runVerify({ casebook, dataFolder, json }: VerifyCommand, io: CliIo): Promise<ExitCode> {
  const view = await openView({ casebook, dataFolder, workingFolder: io.workingFolder });
  if (!view.ok) return sayTrouble(view.error, json, io);
  try {
    const verified = await view.value.casebook.ledgers.verify({ at: new Date().toISOString() });
    if (verified === null) return EXIT.failed;
    if (json) printJson(io, { ok: verified.sound, casebook: view.value.file, ...verified });
    else io.out(inWords(view.value.file, verified));
    return verified.sound ? EXIT.done : EXIT.failed;
  } finally {
    view.value.close();
  }
}

function inWords(file: string, { sound, parts }: Verification): string {
  const lines = parts.map(({ part, checked, sound: fits, fault, note }) =>
    `  ${part.padEnd(18)} ${String(checked).padStart(8)}  ${fits ? 'fits' : `DOES NOT FIT: ${fault ?? ''}`}${note === undefined ? '' : `\n${' '.repeat(30)} ${note}`}`);
  return [file, ...lines, sound ? 'Everything fits.' : 'Not everything fits; look at the entries named above.', ''].join('\n');
}

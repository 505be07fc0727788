import { findCase, openView, viewCall } from '../casebook-view.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { sayTrouble } from '../trouble.ts';
import { writeOut } from '../write-out.ts';

export type BundleCommand = { readonly number: string; readonly out: string; readonly casebook: string | undefined; readonly dataFolder: string; readonly json: boolean };

/** Writes everything of a case as a zip. */
export async function runBundle(command: BundleCommand, io: CliIo): Promise<ExitCode> {
  const { number, out, json } = command;
  const view = await openView({ ...command, workingFolder: io.workingFolder });
  if (!view.ok) return sayTrouble(view.error, json, io);
  try {
    const found = await findCase(view.value, number);
    if (!found.ok) return sayTrouble(found.error, json, io);
    const bundle = await view.value.services['cases.bundle']({ caseId: found.value.id }, viewCall());
    if (!bundle.ok) return sayTrouble(bundle.error, json, io);
    const written = writeOut(out, bundle.value.zip, io.workingFolder);
    if (!written.ok) return sayTrouble(written.error, json, io);
    const { file, bytes, sha256 } = written.value;
    if (json) printJson(io, { ok: true, case: found.value.number, file, bytes, sha256 });
    else io.out(`Case ${found.value.number} written to ${file} (${bytes} bytes, SHA-256 ${sha256}).\n`);
    return EXIT.done;
  } finally {
    view.value.close();
  }
}

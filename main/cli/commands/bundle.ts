import { randomUUID } from 'node:crypto';
import { statSync } from 'node:fs';
import path from 'node:path';
import type { Period } from '../../../app/bundle/bundle-documents.ts';
import { maySign } from '../../../app/domain/role.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import type { Casebook } from '../../../db/open-casebook.ts';
import type { CaseToBundle } from '../../../db/store/bundle-records.ts';
import { bundleWork } from '../../bundle/bundle-work.ts';
import { fileSink, type ByteSink } from '../../bundle/byte-sink.ts';
import { casesOfPeriod } from '../../bundle/cases-of-period.ts';
import { writeBundle, type WrittenBundle } from '../../bundle/write-bundle.ts';
import type { Signer } from '../../keys/signer.ts';
import { openToChange } from '../casebook-to-change.ts';
import { findCase, openView, viewCall, type CasebookView } from '../casebook-view.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { signInAtTerminal, signInUsage, type SignInOptions } from '../sign-in.ts';
import { sayTrouble, type Trouble } from '../trouble.ts';

export type BundleCommand = SignInOptions & {
  /** Number of a case; with `from` and `to` a casebook. */
  readonly what: string | undefined;
  readonly from: string | undefined; readonly to: string | undefined;
  readonly out: string; readonly casebook: string | undefined; readonly dataFolder: string; readonly json: boolean;
};

/** The casebook that is written from; `signer` where somebody signed in whose password opens the laboratory's key. */
type Opened = { readonly casebook: Casebook; readonly file: string; readonly signer: Signer | undefined; close(): void | Promise<void> };

type Chosen = { readonly cases: readonly CaseToBundle[]; readonly period: Period | null };

async function chosenCases({ what, from, to }: BundleCommand, view: Pick<CasebookView, 'casebook' | 'file'>): Promise<Result<Chosen, Trouble>> {
  if (from !== undefined && to !== undefined) {
    const cases = await casesOfPeriod(view.casebook, { from, to });
    return cases.ok ? ok({ cases: cases.value, period: { from, to } }) : cases;
  }
  const found = await findCase(view, what ?? '');
  return found.ok ? ok({ cases: [{ ...found.value, receivedAt: '' }], period: null }) : found;
}

async function openOut(out: string, workingFolder: string): Promise<Result<ByteSink, Trouble>> {
  const file = path.resolve(workingFolder, out);
  if (statSync(file, { throwIfNoEntry: false })?.isDirectory() === true) return err({ code: 'out-is-folder', message: `“${out}” is a folder.`, next: 'Name a file in it with --out.' });
  try {
    return ok(await fileSink(file, randomUUID()));
  } catch (fault) {
    return err(cannotWrite(out, fault));
  }
}

function cannotWrite(out: string, fault: unknown): Trouble {
  const reason = fault instanceof Error && 'code' in fault ? String(fault.code) : String(fault);
  return reason === 'ENOENT'
    ? { code: 'no-folder', message: `The folder for “${out}” is not there.`, next: 'Make it first, or name another file with --out.' }
    : { code: 'cannot-write', message: `“${out}” cannot be written (${reason}).`, next: 'Name a file in a folder where you may write and that has room, with --out.' };
}

function say({ cases, period }: Chosen, out: string, { bytes, sha256, files, unsignedBecause }: WrittenBundle, io: CliIo): void {
  const what = period === null ? `Case ${cases[0]!.number}` : `${cases.length} ${cases.length === 1 ? 'case' : 'cases'} received ${period.from} to ${period.to}`;
  io.out(`${what} written to ${out} (${files} files, ${bytes} bytes, SHA-256 ${sha256}).\n`);
  if (unsignedBecause !== '') io.err('It is not signed: the laboratory’s key is locked. Whoever may sign is named with --person and gives the password; it is then signed.\n');
}

/** Without a person it is only looked at, also while the program has it open. */
async function openFor(command: BundleCommand, io: CliIo): Promise<Result<Opened, Trouble>> {
  const casebook = command.from === undefined ? command.casebook : command.what ?? command.casebook;
  if (command.person === undefined) {
    const view = await openView({ ...command, casebook, workingFolder: io.workingFolder });
    return view.ok ? ok({ casebook: view.value.casebook, file: view.value.file, signer: undefined, close: () => { view.value.close(); } }) : view;
  }
  const opened = await openToChange({ ...command, casebook, workingFolder: io.workingFolder, whileInUse: 'Write the bundle in the window of that program, which signs it, or close it first: signing in is written into the casebook. Without --person it is written unsigned.' });
  if (!opened.ok) return opened;
  const { keyring } = opened.value;
  const person = await signInAtTerminal(opened.value, command, 'to sign a bundle', { personId: null }, io);
  const key = await opened.value.casebook.keys.current();
  const closed = await keyring.closedElsewhere();
  const wrong: Trouble | null = !person.ok ? person.error
    : !maySign(person.value) ? { code: 'not-allowed', message: `Only an appraiser or a manager may sign a bundle; ${person.value.name} is neither.`, next: 'Name somebody else with --person, or leave it out: the bundle is then not signed.' }
      : closed !== null ? { code: 'locked', message: closed.message, next: 'Write the bundle in Culet’s own window on that computer, which signs it.' }
        : key === null || await keyring.seedOf(key.id) === null ? { code: 'locked', message: `The laboratory’s key does not open with the password of ${person.value.name} yet.`, next: 'Sign in once in the window while somebody else who may sign is signed in, then try again.' }
        : null;
  if (wrong === null) return ok({ casebook: opened.value.casebook, file: opened.value.file, signer: keyring, close: () => opened.value.close() });
  await opened.value.close();
  return err(wrong);
}

/** Writes everything of a case, or of the cases received in a period, as a zip. */
export async function runBundle(command: BundleCommand, io: CliIo): Promise<ExitCode> {
  const { out, json, from, to, what } = command;
  if ((from === undefined) !== (to === undefined) || (from === undefined && what === undefined)) {
    sayTrouble({ code: 'usage', message: 'A bundle is of one case, or of a period with --from and --to.', next: 'Name the number of the case, or both days as year-month-day.' }, json, io);
    return EXIT.usage;
  }
  const usage = signInUsage(command, io, json);
  if (usage !== null) return usage;
  const view = await openFor(command, io);
  if (!view.ok) return sayTrouble(view.error, json, io);
  try {
    const chosen = await chosenCases(command, view.value);
    if (!chosen.ok) return sayTrouble(chosen.error, json, io);
    const sink = await openOut(out, io.workingFolder);
    if (!sink.ok) return sayTrouble(sink.error, json, io);
    const written = await writeTo(sink.value, chosen.value, view.value, out);
    if (!written.ok) return sayTrouble(written.error, json, io);
    const { cases, period } = chosen.value;
    if (json) printJson(io, { ok: true, ...(period === null ? { case: cases[0]!.number } : { period, cases: cases.map(({ number }) => number) }), file: out, bytes: written.value.bytes, sha256: written.value.sha256, files: written.value.files, signed: written.value.unsignedBecause === '' });
    else say(chosen.value, out, written.value, io);
    return EXIT.done;
  } finally {
    await view.value.close();
  }
}

async function writeTo(sink: ByteSink, { cases, period }: Chosen, { casebook, signer }: Opened, out: string): Promise<Result<WrittenBundle, Trouble>> {
  try {
    return await writeBundle({ cases, period, sink }, bundleWork(casebook, new Date().toISOString(), viewCall(), signer));
  } catch (fault) {
    // A disk that is full or was taken away; anything else is a fault of the program and is thrown on.
    if (fault instanceof Error && 'syscall' in fault) return err(cannotWrite(out, fault));
    throw fault;
  }
}

import path from 'node:path';
import { MAX_CHECKED_HOW, type SealedBundleView } from '../../../app/contract/bundles.ts';
import { judgeBundle, type BundleCheck } from '../../../app/bundle/judge-bundle.ts';
import { MAX_ARCHIVE_BYTES } from '../../../app/bundle/zip-form.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import type { Contradiction } from '../../../db/store/sealed-cases.ts';
import type { ByteSource } from '../../bundle/byte-source.ts';
import { checkBundle } from '../../bundle/check-bundle.ts';
import { createDescribeKept } from '../../bundle/describe-kept.ts';
import { createKeptBundles } from '../../bundle/kept-bundle.ts';
import { digestOf } from '../../bundle/digest-of.ts';
import { keepBundle, mayBeTakenIn, tooLargeToKeep, type Brought } from '../../bundle/take-in.ts';
import { knownFor } from '../../services/known-for-reports.ts';
import type { Session } from '../../services/service.ts';
import { openToChange, type CasebookToChange } from '../casebook-to-change.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { sayProgress } from '../say-progress.ts';
import { signInAtTerminal, type SignInOptions } from '../sign-in.ts';
import { sayTrouble, type Trouble } from '../trouble.ts';
import { BUNDLE_EXITS, openBundle } from './verify-bundle.ts';

export type ImportCommand = SignInOptions & {
  /** The zip. */
  readonly file: string;
  readonly casebook: string | undefined;
  readonly dataFolder: string;
  /** How it was made sure whose it is; empty where nothing was said. */
  readonly checkedHow: string;
  readonly progress: boolean;
  readonly json: boolean;
};

type Refused = { readonly trouble: Trouble; readonly exit: ExitCode };
const refused = (trouble: Trouble, exit: ExitCode = EXIT.failed): { readonly ok: false; readonly error: Refused } => err({ trouble, exit });

type Taken = { readonly bundle: SealedBundleView; readonly contradictions: readonly Contradiction[] };
type Taking = { readonly command: ImportCommand; readonly io: CliIo; readonly source: ByteSource; readonly check: BundleCheck };

/** In the name of the manager who signs in; the exit code says why not. */
async function takeIn({ command, io, source, check }: Taking, opened: CasebookToChange): Promise<Result<Taken, Refused>> {
  const { casebook, keyring } = opened;
  const session: Session = { personId: null };
  const person = await signInAtTerminal({ casebook, keyring }, command, 'to take a bundle in', session, io);
  if (!person.ok) return refused(person.error);
  if (!person.value.roles.includes('manager')) return refused({ code: 'not-allowed', message: `Only a manager may take a bundle in; ${person.value.name} is none.`, next: 'Name a manager with --person.' });
  const brought: Brought = { name: path.basename(command.file), check, sha256: digestOf(source), size: source.size, checkedHow: command.checkedHow };
  const { keys } = await knownFor(casebook);
  const fit = mayBeTakenIn(brought, keys);
  if (!fit.ok) {
    const asks = fit.error.fields?.['checkedHow'] !== undefined;
    return asks
      ? refused({ ...fit.error, next: 'Say it with --checked-how, for instance "fingerprint read out by telephone". It is kept with the bundle. Nothing was taken in.' }, BUNDLE_EXITS[judgeBundle(check, keys).verdict])
      : refused(fit.error);
  }
  const stop = new AbortController();
  void io.askedToEnd().then(() => { stop.abort(); });
  const said = sayProgress(io, 'Taking in', command.progress);
  const kept = await keepBundle(casebook, { at: new Date().toISOString(), personId: person.value.id, operation: 'bundles.takeIn' }, fit.value, source, { signal: stop.signal, progress: (done, size) => { said.step(done, size); } });
  said.end();
  if (!kept.ok) return refused(kept.error);
  await createDescribeKept(createKeptBundles())(casebook);
  return ok({ bundle: kept.value, contradictions: (await casebook.sealedCases.contradictions()).filter((one) => one.id === kept.value.id) });
}

function whyNotTried({ person, checkedHow }: ImportCommand): Trouble | null {
  if (person === undefined) return { code: 'usage', message: 'A bundle is taken in in the name of a manager.', next: 'Name the manager with --person; the password is asked for, or read with --password-stdin.' };
  return checkedHow.length > MAX_CHECKED_HOW ? { code: 'usage', message: 'What --checked-how says is too long.', next: `At most ${MAX_CHECKED_HOW} characters.` } : null;
}

/** Looks at the zip before anybody has to sign in: one that is altered, or none of Culet's, is refused whoever asks. */
function checkFirst(source: ByteSource, command: ImportCommand, io: CliIo): Result<BundleCheck, Refused> {
  if (source.size > MAX_ARCHIVE_BYTES) return refused(tooLargeToKeep(source.size)!);
  const said = sayProgress(io, 'Checking bytes', command.progress);
  const check = checkBundle(source, { progress: (done, total) => { said.step(done, total); } });
  said.end();
  const judged = judgeBundle(check, []);
  if (judged.verdict === 'altered' || judged.verdict === 'not-a-bundle') {
    return refused({ code: judged.verdict, message: [judged.sentence, ...judged.faults.slice(0, 1).map((one) => one.sentence)].join(' '), next: judged.next }, BUNDLE_EXITS[judged.verdict]);
  }
  const large = tooLargeToKeep(source.size);
  return large === null ? ok(check) : refused(large);
}

function say({ bundle, contradictions }: Taken, casebook: string, command: ImportCommand, io: CliIo): void {
  const { summary } = bundle;
  if (command.json) {
    printJson(io, { ok: true, casebook, file: command.file, id: bundle.id, name: bundle.name, bytes: bundle.size, verdict: bundle.verdict, fingerprint: bundle.fingerprint, checkedHow: bundle.checkedHow, laboratory: summary.laboratory, demonstration: summary.demonstration, cases: summary.cases, takenAt: bundle.takenAt, takenBy: bundle.takenBy, contradictions: contradictions.map(({ other, sentence }) => ({ other, sentence })) });
    return;
  }
  const held = summary.cases.length === 1 ? `case ${summary.cases[0]!}` : `${summary.cases.length} cases`;
  io.out(`Taken in: ${held} of ${summary.laboratory}, ${bundle.size} bytes, SHA-256 ${bundle.id}.\nIt is kept as it came in ${casebook}, apart from the cases of the house, by ${bundle.takenBy}.\n`);
  if (contradictions.length > 0) io.err(`It contradicts what was taken in before:\n${contradictions.map(({ sentence }) => `  ${sentence}\n`).join('')}Ask the laboratory before you rely on either.\n`);
}

/** Checks a bundle of another laboratory and keeps it in a casebook as it came, in the name of a manager who signs in. */
export async function runImport(command: ImportCommand, io: CliIo): Promise<ExitCode> {
  const { file, json } = command;
  const wrong = whyNotTried(command);
  if (wrong !== null) {
    sayTrouble(wrong, json, io);
    return EXIT.usage;
  }
  const source = openBundle(file, io.workingFolder);
  if (!source.ok) return sayTrouble(source.error, json, io);
  try {
    const check = checkFirst(source.value, command, io);
    if (!check.ok) {
      sayTrouble(check.error.trouble, json, io);
      return check.error.exit;
    }
    const opened = await openToChange({ ...command, workingFolder: io.workingFolder, whileInUse: 'Take it in in the window of that program (Reports, Check a report), or close it first.' });
    if (!opened.ok) return sayTrouble(opened.error, json, io);
    const taken = await takeIn({ command, io, source: source.value, check: check.value }, opened.value).finally(() => opened.value.close());
    if (taken.ok) {
      say(taken.value, opened.value.file, command, io);
      return EXIT.done;
    }
    sayTrouble(taken.error.trouble, json, io);
    return taken.error.exit;
  } finally {
    source.value.close();
  }
}

import { closeSync, openSync, readSync, statSync } from 'node:fs';
import path from 'node:path';
import type { BundleVerdict } from '../../../app/bundle/bundle-verdict.ts';
import { judgeBundle } from '../../../app/bundle/judge-bundle.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import { inGroups } from '../../../app/signature/fingerprint.ts';
import { fileSource, type ByteSource } from '../../bundle/byte-source.ts';
import { checkBundle } from '../../bundle/check-bundle.ts';
import { digestOf } from '../../bundle/digest-of.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { nextAtTerminal } from '../next-at-terminal.ts';
import { sayTrouble, type Trouble } from '../trouble.ts';
import { knownBy, type KnownBy } from './known-keys.ts';

export type VerifyBundleCommand = KnownBy & { readonly file: string; readonly json: boolean };

export const BUNDLE_EXITS: Readonly<Record<BundleVerdict['verdict'], ExitCode>> = {
  authentic: EXIT.done, altered: EXIT.failed, 'unknown-key': EXIT.unknownKey, unsigned: EXIT.unsigned, 'not-a-bundle': EXIT.unsigned,
};

/** Whether a file is meant to be a bundle: by its name, or by how a zip begins (PKWARE APPNOTE 4.3.7). */
export function isBundle(name: string, workingFolder: string): boolean {
  if (/\.zip$/i.test(name)) return true;
  if (/\.(culet|pdf)$/i.test(name)) return false;
  const file = path.resolve(workingFolder, name);
  if (statSync(file, { throwIfNoEntry: false })?.isFile() !== true) return false;
  const beginning = Buffer.alloc(4);
  try {
    const open = openSync(file, 'r');
    try {
      readSync(open, beginning, 0, 4, 0);
    } finally {
      closeSync(open);
    }
  } catch {
    return false;
  }
  return beginning.toString('latin1') === 'PK\u0003\u0004';
}

/** A file that is read where it is needed, however long it is. */
export function openBundle(name: string, workingFolder: string): Result<ByteSource, Trouble> {
  const file = path.resolve(workingFolder, name);
  if (statSync(file, { throwIfNoEntry: false })?.isFile() !== true) return err({ code: 'missing', message: `“${name}” is not there, or is a folder.`, next: 'Look at the spelling and at the folder you are in.' });
  try {
    return ok(fileSource(file));
  } catch (fault) {
    const reason = fault instanceof Error && 'code' in fault ? String(fault.code) : String(fault);
    return err({ code: 'cannot-open', message: `“${name}” can’t be read (${reason}).`, next: 'Name a file that you may read.' });
  }
}

/** A verdict as lines for a person. */
export function bundleInWords(name: string, { sentence, next, faults, bundle, key }: Omit<BundleVerdict, 'sha256' | 'bytes'>): string {
  return [
    `${name}: ${sentence}`,
    ...faults.map((one) => `  ${one.sentence}`),
    ...(bundle === null ? [] : [
      `  Exported ${bundle.exportedAt}. Files: ${bundle.files}; reports: ${bundle.reports}; raw records: ${bundle.rawRecords}.`,
      `  Recomputed: ${bundle.ledgers.custody} entries of the custody ledger, ${bundle.ledgers.audit} of the audit ledger; digests walked: ${bundle.ledgers.walked}; checkpoints: ${bundle.ledgers.checkpoints}.`,
    ]),
    ...(key === null ? [] : [`  Fingerprint of the key: ${inGroups(key.fingerprint)}.`]),
    next, '',
  ].join('\n');
}

/** Tells whether a zip is a bundle as a laboratory wrote it. */
export async function runVerifyBundle(command: VerifyBundleCommand, io: CliIo): Promise<ExitCode> {
  const { file, json } = command;
  const source = openBundle(file, io.workingFolder);
  if (!source.ok) return sayTrouble(source.error, json, io);
  try {
    const known = await knownBy(command, io);
    if (!known.ok) return sayTrouble(known.error, json, io);
    const judgement = judgeBundle(checkBundle(source.value), known.value.keys);
    const judged = { ...judgement, next: nextAtTerminal(judgement) };
    if (json) printJson(io, { ok: judged.verdict === 'authentic', file, ...judged, sha256: digestOf(source.value), bytes: source.value.size });
    else io.out(bundleInWords(file, judged));
    return BUNDLE_EXITS[judged.verdict];
  } finally {
    source.value.close();
  }
}

import { createHash } from 'node:crypto';
import { closeSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
import path from 'node:path';
import { bytesToHex } from '@noble/hashes/utils.js';
import { MAX_FILE_BYTES } from '../../../app/contract/common.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import { judgeReport, type Known } from '../../../app/signature/judge-report.ts';
import { inGroups } from '../../../app/signature/fingerprint.ts';
import { readPublicKeyFile } from '../../../app/signature/public-key-file.ts';
import type { ReportVerdict } from '../../../app/signature/report-verdict.ts';
import { KNOWN_TO_NOBODY, knownFor } from '../../services/known-for-reports.ts';
import { checkReport } from '../../signature/check-report.ts';
import { openView } from '../casebook-view.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { sayTrouble, type Trouble } from '../trouble.ts';

export type VerifyReportCommand = {
  readonly file: string;
  /** File of the public key of the laboratory that is said to have signed. */
  readonly key: string | undefined;
  /** Casebook whose keys and reports are known; the one last used where none is named. */
  readonly casebook: string | undefined;
  readonly dataFolder: string; readonly json: boolean;
};

const EXITS: Readonly<Record<ReportVerdict['verdict'], ExitCode>> = {
  authentic: EXIT.done, altered: EXIT.failed, 'unknown-key': EXIT.unknownKey, unsigned: EXIT.unsigned, draft: EXIT.unsigned, 'not-a-report': EXIT.unsigned,
};

function readWhole(name: string, workingFolder: string): Result<Uint8Array, Trouble> {
  const file = path.resolve(workingFolder, name);
  const size = statSync(file, { throwIfNoEntry: false })?.size;
  if (size === undefined) return err({ code: 'missing', message: `“${name}” is not there.`, next: 'Look at the spelling and at the folder you are in.' });
  if (size > MAX_FILE_BYTES) return err({ code: 'too-large', message: `“${name}” is larger than 64 MB.`, next: 'Check it with the common tools named in docs/verify-a-report.md.' });
  try {
    return ok(readFileSync(file));
  } catch (fault) {
    const reason = fault instanceof Error && 'code' in fault ? String(fault.code) : String(fault);
    return err({ code: 'cannot-open', message: `“${name}” can’t be read (${reason}).`, next: 'Name a file that you may read.' });
  }
}

function knownFromKey(name: string, workingFolder: string): Result<Known, Trouble> {
  const bytes = readWhole(name, workingFolder);
  if (!bytes.ok) return bytes;
  const read = readPublicKeyFile(Buffer.from(bytes.value).toString('utf8'));
  if (!read.ok) return err({ code: 'no-key', message: read.error, next: 'Ask the laboratory for the file of its public key.' });
  const whose = read.value.laboratory.trim() === '' ? `the owner of the key in ${path.basename(name)}` : read.value.laboratory;
  return ok({ keys: [{ publicKey: bytesToHex(read.value.publicKey), whose, own: false, distrust: '' }], standing: () => null });
}

/** What the named casebook knows; what the one last used knows, where there is one that opens. */
async function knownFromCasebook({ casebook, dataFolder }: VerifyReportCommand, io: CliIo): Promise<Result<Known, Trouble>> {
  const view = await openView({ casebook, dataFolder, workingFolder: io.workingFolder });
  if (!view.ok) return casebook === undefined ? ok(KNOWN_TO_NOBODY) : view;
  try {
    return ok(await knownFor(view.value.casebook));
  } finally {
    view.value.close();
  }
}

function inWords(name: string, { sentence, next, altered, standing, key, report }: Omit<ReportVerdict, 'sha256' | 'bytes'>): string {
  return [
    `${name}: ${sentence}`,
    ...altered.map((entry) => `  ${entry.sentence}`),
    ...(report === null ? [] : [`  Issued ${report.issuedAt}. SHA-256 of report.json: ${report.content}.`]),
    ...(key === null ? [] : [`  Fingerprint of the key: ${inGroups(key.fingerprint)}.`]),
    ...(standing === null ? [] : [standing.sentence]),
    next, '',
  ].join('\n');
}

/** Whether a file is meant to be a report and not a casebook: by its name, or by its first bytes where that says nothing. */
export function isReport(name: string, workingFolder: string): boolean {
  if (/\.pdf$/i.test(name)) return true;
  if (/\.culet$/i.test(name)) return false;
  const file = path.resolve(workingFolder, name);
  if (statSync(file, { throwIfNoEntry: false })?.isFile() !== true) return false;
  const beginning = Buffer.alloc(1024);
  try {
    const open = openSync(file, 'r');
    try {
      readSync(open, beginning, 0, beginning.length, 0);
    } finally {
      closeSync(open);
    }
  } catch {
    return false;
  }
  return beginning.includes('%PDF-');
}

/** Tells whether a PDF is a report as a laboratory issued it. */
export async function runVerifyReport(command: VerifyReportCommand, io: CliIo): Promise<ExitCode> {
  const { file, key, json } = command;
  const bytes = readWhole(file, io.workingFolder);
  if (!bytes.ok) return sayTrouble(bytes.error, json, io);
  const known = key === undefined ? await knownFromCasebook(command, io) : knownFromKey(key, io.workingFolder);
  if (!known.ok) return sayTrouble(known.error, json, io);
  const judged = judgeReport(checkReport(bytes.value), known.value);
  const sha256 = createHash('sha256').update(bytes.value).digest('hex');
  if (json) printJson(io, { ok: judged.verdict === 'authentic', file, ...judged, sha256, bytes: bytes.value.byteLength });
  else io.out(inWords(file, judged));
  return EXITS[judged.verdict];
}

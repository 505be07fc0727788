import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync, statSync } from 'node:fs';
import path from 'node:path';
import { MAX_REPORT_BYTES } from '../../../app/contract/uploads.ts';
import { judgeReport } from '../../../app/signature/judge-report.ts';
import { inGroups } from '../../../app/signature/fingerprint.ts';
import type { ReportVerdict } from '../../../app/signature/report-verdict.ts';
import { checkReport } from '../../signature/check-report.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { sayTrouble } from '../trouble.ts';
import { nextAtTerminal } from '../next-at-terminal.ts';
import { knownBy, readWhole, type KnownBy } from './known-keys.ts';

export type VerifyReportCommand = KnownBy & { readonly file: string; readonly json: boolean };

const EXITS: Readonly<Record<ReportVerdict['verdict'], ExitCode>> = {
  authentic: EXIT.done, altered: EXIT.failed, 'unknown-key': EXIT.unknownKey, unsigned: EXIT.unsigned, draft: EXIT.unsigned, 'not-a-report': EXIT.unsigned,
};

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
  const { file, json } = command;
  const bytes = readWhole(file, io.workingFolder, MAX_REPORT_BYTES);
  if (!bytes.ok) return sayTrouble(bytes.error, json, io);
  const known = await knownBy(command, io);
  if (!known.ok) return sayTrouble(known.error, json, io);
  const judgement = judgeReport(checkReport(bytes.value), known.value);
  const judged = { ...judgement, next: nextAtTerminal(judgement) };
  const sha256 = createHash('sha256').update(bytes.value).digest('hex');
  if (json) printJson(io, { ok: judged.verdict === 'authentic', file, ...judged, sha256, bytes: bytes.value.byteLength });
  else io.out(inWords(file, judged));
  return EXITS[judged.verdict];
}

import path from 'node:path';
import { inGroups } from '../../../app/signature/fingerprint.ts';
import { runDemo } from '../../demonstration/run-demo.ts';
import { programFolders } from '../../host/program-folders.ts';
import { createInlinePool } from '../../workers/inline-pool.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { sayTrouble } from '../trouble.ts';

export type DemoCommand = { readonly out: string; readonly casebook: string | undefined; readonly json: boolean };

/** Builds the demonstration casebook, one finished report, one case bundle, and the key that the report was signed with. */
export async function runDemoCommand({ out, casebook, json }: DemoCommand, io: CliIo): Promise<ExitCode> {
  const started = performance.now();
  const pool = createInlinePool();
  if (!json) io.err('Building the demonstration; this takes some ten seconds.\n');
  const made = await runDemo({
    out: path.resolve(io.workingFolder, out), casebook: casebook === undefined ? undefined : path.resolve(io.workingFolder, casebook),
    migrations: programFolders().migrations, pool, now: () => new Date(),
  });
  await pool.close();
  if (!made.ok) return sayTrouble(made.error, json, io);
  const { casebook: file, cases, stones, report, bundle, key } = made.value;
  if (json) {
    printJson(io, { ok: true, casebook: file, cases, stones, report, bundle, key });
    return EXIT.done;
  }
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  io.out([
    `Demonstration, all of it invented: ${cases} cases with ${stones} stones, built in ${seconds} s.`,
    `Casebook  ${file}`,
    `Report    ${report.file}  (${report.number}, case ${report.case}; SHA-256 ${report.sha256})`,
    `Bundle    ${bundle.file}  (case ${bundle.case}; SHA-256 ${bundle.sha256})`,
    `Key       ${key.file}  (fingerprint ${inGroups(key.fingerprint)})`,
    '',
  ].join('\n'));
  return EXIT.done;
}

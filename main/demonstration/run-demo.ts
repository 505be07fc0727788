import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { publicKeyFromHex } from '../../app/signature/fingerprint.ts';
import { writePublicKeyFile } from '../../app/signature/public-key-file.ts';
import { openCasebook, type Casebook } from '../../db/open-casebook.ts';
import { moveFile } from '../casebook/casebook-file.ts';
import { writeSmallFile } from '../host/write-small-file.ts';
import { createKeyring } from '../keys/keyring.ts';
import { createWorkServices } from '../services/work-services.ts';
import type { Call } from '../services/service.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import { createBuildDemonstration } from './build-demonstration.ts';
import type { Scenario } from './scenario-schema.ts';
import { createSeededIds } from './seeded-ids.ts';

export type DemoOptions = {
  /** Absolute path of the folder to write into; made where it is not there. */
  readonly out: string;
  /** Absolute path of the casebook, where it shall not lie in that folder. */
  readonly casebook?: string | undefined;
  readonly migrations: string;
  readonly pool: TaskPool;
  readonly now: () => Date;
  /** Another scenario than the one that comes with the program; it must issue a report. */
  readonly scenario?: Scenario;
  progress?(done: number, total: number, note: string): void;
};

export type DemoFile = { readonly file: string; readonly bytes: number; readonly sha256: string };
export type DemoOutcome = {
  readonly casebook: string;
  readonly cases: number; readonly stones: number;
  readonly report: DemoFile & { readonly number: string; readonly case: string };
  readonly bundle: DemoFile & { readonly case: string };
  /** Public key of the invented laboratory: with it a stranger checks the report. */
  readonly key: DemoFile & { readonly fingerprint: string };
};

/** Why nothing was written. */
export type DemoTrouble = { readonly code: string; readonly message: string; readonly next: string };

const KEY_NAME = 'laboratory-key.pem';
const CASEBOOK_NAME = 'Demonstration.culet';
const FILE_SEED = 7;

const call = (): Call => ({ session: { personId: null }, signal: new AbortController().signal, emit() {} });

/** What stands in the way of writing a casebook there: a demonstration may be replaced, anything else may not. */
async function inTheWay(file: string, options: DemoOptions): Promise<DemoTrouble | null> {
  if (!existsSync(file)) return null;
  const there = openCasebook({ file, mustExist: true, readOnly: true, migrationsFolder: options.migrations, now: options.now, newId: () => '' });
  if (!there.ok) {
    return { code: there.error.code, message: `${file} is there already and is not a demonstration that can be replaced: ${there.error.message}`, next: 'Close the program that has it open, or name another folder with --out.' };
  }
  const laboratory = await there.value.laboratory.get();
  there.value.close();
  return laboratory?.isDemonstration === true ? null
    : { code: 'exists', message: `${file} is there already and holds ${laboratory === null ? 'no demonstration' : `the records of ${laboratory.name}`}; it was not touched.`, next: 'Name another folder with --out.' };
}

function removeWithLog(file: string): void {
  for (const suffix of ['', '-wal', '-shm']) rmSync(`${file}${suffix}`, { force: true });
}

function write(file: string, bytes: Uint8Array): DemoFile {
  writeSmallFile(file, bytes, String(process.pid));
  return { file, bytes: bytes.byteLength, sha256: createHash('sha256').update(bytes).digest('hex') };
}

const asked = <T>(answer: Result<T, Failure>): T => {
  if (answer.ok) return answer.value;
  throw new Error(`demonstration: ${answer.error.message}`);
};

async function writeKey(casebook: Casebook, out: string): Promise<DemoOutcome['key']> {
  const key = await casebook.keys.current();
  const laboratory = await casebook.laboratory.get();
  const publicKey = key === null ? null : publicKeyFromHex(key.publicKey);
  if (key === null || publicKey === null || laboratory === null) throw new Error('demonstration: there is no key');
  const text = writePublicKeyFile({ laboratory: laboratory.name, publicKey, madeAt: key.createdAt, invented: laboratory.isDemonstration });
  return { ...write(path.join(out, KEY_NAME), Buffer.from(text, 'utf8')), fingerprint: key.fingerprint };
}

/** Writes the newest report as it was issued, and the bundle of its case. */
async function writePapers(casebook: Casebook, { out, pool, now }: DemoOptions): Promise<Pick<DemoOutcome, 'report' | 'bundle' | 'key' | 'cases' | 'stones'>> {
  const services = createWorkServices({ casebook: () => casebook, signer: createKeyring(() => casebook), pool, now, newId: () => { throw new Error('the papers of the demonstration make no records'); } });
  const newest = asked(await services['reports.list']({ caseId: null }, call()))[0];
  if (newest === undefined) throw new Error('demonstration: no report was issued');
  const pdf = asked(await services['reports.pdf']({ reportId: newest.id }, call()));
  const bundle = asked(await services['cases.bundle']({ caseId: newest.caseId }, call()));
  const { counts } = await casebook.bench.today(now().toISOString(), null);
  return {
    cases: counts.cases, stones: counts.stones,
    report: { ...write(path.join(out, pdf.name), pdf.pdf), number: newest.number, case: newest.caseNumber },
    bundle: { ...write(path.join(out, bundle.name), bundle.zip), case: newest.caseNumber },
    key: await writeKey(casebook, out),
  };
}

/** Builds under a temporary name; the file takes its place only when everything is in it. */
async function build(file: string, options: DemoOptions): Promise<Result<Omit<DemoOutcome, 'casebook'>, DemoTrouble>> {
  const { now, pool, scenario } = options;
  const temporary = `${file}.part`;
  removeWithLog(temporary);
  const opened = openCasebook({ file: temporary, mustExist: false, migrationsFolder: options.migrations, now, newId: createSeededIds(FILE_SEED, now) });
  if (!opened.ok) return opened;
  try {
    await createBuildDemonstration({ pool, now, ...(scenario === undefined ? {} : { scenario }) })(opened.value, (done, total, note) => options.progress?.(done, total, note));
    const papers = await writePapers(opened.value, options);
    opened.value.close();
    removeWithLog(file);
    moveFile(temporary, file);
    return ok(papers);
  } catch (fault) {
    opened.value.close();
    removeWithLog(temporary);
    throw fault;
  }
}

/**
 * Builds the demonstration casebook and writes it with one finished report (PDF), the bundle of its case (zip) and the public key it was signed with.
 * Needs no display. A demonstration that lies there is replaced; any other casebook is left alone and named.
 */
export async function runDemo(options: DemoOptions): Promise<Result<DemoOutcome, DemoTrouble>> {
  const file = options.casebook ?? path.join(options.out, CASEBOOK_NAME);
  try {
    mkdirSync(options.out, { recursive: true });
    mkdirSync(path.dirname(file), { recursive: true });
    const obstacle = await inTheWay(file, options);
    if (obstacle !== null) return err(obstacle);
    const built = await build(file, options);
    return built.ok ? ok({ casebook: file, ...built.value }) : built;
  } catch (fault) {
    const code = fault instanceof Error && 'code' in fault ? String(fault.code) : '';
    if (!/^E[A-Z]+$/.test(code)) throw fault;
    return err({ code: 'cannot-write', message: `The demonstration could not be written to ${options.out} (${code}).`, next: 'Name a folder where you may write, with --out.' });
  }
}

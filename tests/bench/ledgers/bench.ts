import { createHash } from 'node:crypto';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { createVerifyWithHelpers, verifyOnThisThread, type Verify } from '../../../main/verify/verify-with-helpers.ts';
import { makeCasebook, openMade, stonesFor } from './make-casebook.ts';

const DEFAULT_ENTRIES = 100_000;
/** The bundle that the window and the command line use. */
const COMMAND_LINE = path.resolve(import.meta.dirname, '../../../dist/main/culet.cjs');
const VERIFY_WORKER = path.resolve(import.meta.dirname, '../../../dist/main/verify-worker.cjs');
/** What is asked of a casebook of a million entries on two cores, and of whatever serves a window. */
const LIMIT_MS = 10_000;
const PAUSE_MS = 50;
const { values } = parseArgs({ options: { entries: { type: 'string', default: String(DEFAULT_ENTRIES) }, folder: { type: 'string' } } });
const entries = Number(values.entries);
if (!Number.isInteger(entries) || entries < 100) throw new Error('Say --entries as a whole number of at least 100.');

const folder = values.folder === undefined ? mkdtempSync(path.join(tmpdir(), 'culet-bench-')) : path.resolve(values.folder);
mkdirSync(folder, { recursive: true });
const seconds = (ms: number): string => `${(ms / 1000).toFixed(2)} s`;

/** Wall and processor time of `work`, milliseconds. */
async function timed<T>(work: () => Promise<T> | T): Promise<{ value: T; wall: number; processor: number }> {
  const wall = performance.now();
  const before = process.cpuUsage();
  const value = await work();
  const { user, system } = process.cpuUsage(before);
  return { value, wall: performance.now() - wall, processor: (user + system) / 1000 };
}

try {
  const there = existsSync(path.join(folder, 'Casebook.culet'));
  if (!there) {
    const { casebook: written, ms } = await makeCasebook(folder, stonesFor(entries), () => {});
    written.close();
    console.log(`written in ${seconds(ms)}`);
  }
  // Opened anew, as a person would: what a connection keeps after a million entries in one day is nobody's case.
  const { casebook, file, ms } = openMade(folder);
  const db = casebook.handle.read;
  const kept = ['custody_entry', 'audit_entry'].map((table) => db.get<{ n: number }>(`SELECT count(*) AS n FROM ${table}`)!.n);
  const total = kept[0]! + kept[1]!;
  console.log(`${total.toLocaleString('en')} entries, opened in ${seconds(ms)} (${kept[0]!.toLocaleString('en')} of custody, ${kept[1]!.toLocaleString('en')} of the audit ledger)`);
  // The least that any check must do: read the same entries and hash their bytes.
  const plain = await timed(() => {
    let bytes = 0;
    for (const table of ['custody_entry', 'audit_entry']) {
      for (const { content, previous } of db.all<{ content: string; previous: string }>(`SELECT content, previous FROM ${table} ORDER BY seq`)) {
        createHash('sha256').update(content).update(previous).digest('hex');
        bytes += content.length;
      }
    }
    return bytes;
  });
  console.log(`plain SHA-256 of the same contents   ${seconds(plain.wall)} wall, ${seconds(plain.processor)} processor, ${(plain.value / 1e6).toFixed(1)} MB`);
  const check = async (name: string, verify: Verify): Promise<{ wall: number; longest: number }> => {
    let longest = 0;
    let last = performance.now();
    const ticking = setInterval(() => { const now = performance.now(); longest = Math.max(longest, now - last); last = now; }, 5);
    let told = 0;
    const whole = await timed(() => verify(casebook, { at: '2026-11-25T09:00:00.000Z', progress: () => { told += 1; } }));
    clearInterval(ticking);
    const unsound = whole.value?.parts.filter((part) => !part.sound) ?? [];
    console.log(`${name.padEnd(36)} ${seconds(whole.wall)} wall, ${seconds(whole.processor)} processor, ${(whole.processor / plain.processor).toFixed(1)} × plain, ${(total / (whole.wall / 1000)).toFixed(0)} entries a second; progress told ${told} times, longest pause of the event loop ${longest.toFixed(0)} ms; ${unsound.length === 0 ? 'sound' : unsound.map((part) => part.fault).join(' ')}`);
    return { wall: whole.wall, longest };
  };
  const one = await check('verify, every part, this thread', verifyOnThisThread);
  const threads = await check('verify, every part, threads', createVerifyWithHelpers({ workerFile: VERIFY_WORKER }));
  console.log(`threads: ${(one.wall / threads.wall).toFixed(2)} × one thread; machine’s load ${loadavg()[0]!.toFixed(1)} on ${availableParallelism()} cores`);
  const allowed = Math.max(1, total / 1e6) * LIMIT_MS;
  console.log(`limit: 10 s wall for a million entries (${seconds(allowed)} here): ${threads.wall <= allowed ? 'kept' : 'NOT KEPT'}; 50 ms pause: ${threads.longest <= PAUSE_MS ? 'kept' : 'NOT KEPT'}`);
  casebook.close();
  // What a stranger types, from the start of the program to its end.
  const begun = performance.now();
  const { status } = spawnSync(process.execPath, [COMMAND_LINE, 'verify', file], { stdio: ['ignore', 'ignore', 'inherit'] });
  console.log(`culet verify, from start to end       ${seconds(performance.now() - begun)} wall; ${status === 0 ? 'sound' : `ended with ${status}`}`);
} finally {
  if (values.folder === undefined) rmSync(folder, { recursive: true, force: true });
}

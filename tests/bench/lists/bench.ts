import { mkdirSync, mkdtempSync, existsSync, rmSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { encodeWire } from '../../../app/contract/wire.ts';
import { dispatch } from '../../../main/host/dispatch.ts';
import { makeCasebook, openMade, stonesFor } from '../ledgers/make-casebook.ts';
import { asked } from './asked.ts';
import { readingHouse } from './reading-house.ts';

const DEFAULT_ENTRIES = 1_000_000;
/** What a call may keep the main process from anything else. */
const LIMIT_MS = 50;
const { values } = parseArgs({ options: { entries: { type: 'string', default: String(DEFAULT_ENTRIES) }, folder: { type: 'string' }, only: { type: 'string', default: '' }, rounds: { type: 'string', default: '5' } } });
const entries = Number(values.entries);
const rounds = Number(values.rounds);
if (!Number.isInteger(entries) || entries < 100) throw new Error('Say --entries as a whole number of at least 100.');
if (!Number.isInteger(rounds) || rounds < 1) throw new Error('Say --rounds as a whole number of at least 1.');

const folder = values.folder === undefined ? mkdtempSync(path.join(tmpdir(), 'culet-bench-')) : path.resolve(values.folder);
mkdirSync(folder, { recursive: true });

const median = (all: readonly number[]): number => [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)]!;

/** How long `work` takes, and the longest stretch in which it let nothing else run, ms of the thread's own time: on a machine that others keep busy a thread also stands still. */
async function watched<T>(work: () => Promise<T>): Promise<{ readonly value: T; readonly ms: number; readonly stretch: number }> {
  const spent = () => { const { user, system } = process.threadCpuUsage(); return (user + system) / 1000; };
  let last = spent();
  let stretch = 0;
  const look = () => { const now = spent(); stretch = Math.max(stretch, now - last); last = now; };
  let going = true;
  const again = () => { look(); if (going) setImmediate(again); };
  setImmediate(again);
  const started = performance.now();
  const value = await work();
  const ms = performance.now() - started;
  look();
  going = false;
  return { value, ms, stretch };
}
const shown = (ms: number): string => ms.toFixed(ms < 10 ? 1 : 0);

try {
  if (!existsSync(path.join(folder, 'Casebook.culet'))) (await makeCasebook(folder, stonesFor(entries), () => {})).casebook.close();
  const { casebook, ms } = openMade(folder);
  console.log(`opened in ${(ms / 1000).toFixed(2)} s`);
  casebook.handle.transactNow((tx) => { tx.run('CREATE TEMP TABLE bench (round INTEGER)'); });
  const { house, call } = await readingHouse(casebook);
  console.log('| asked | first, ms | median, ms | worst, ms | longest stretch, ms | for the wire, ms | KB | |\n|---|---|---|---|---|---|---|---|');
  for (const { what, name, input } of asked(casebook).filter((one) => `${one.what} ${one.name}`.includes(values.only))) {
    const times: number[] = [];
    const stretches: number[] = [];
    let reply: unknown;
    for (let round = 0; round < rounds; round += 1) {
      // What was kept of the answer before is forgotten, as after any change.
      casebook.handle.transactNow((tx) => { tx.run('INSERT INTO temp.bench VALUES (?)', [round]); });
      const { value: answer, ms: took, stretch } = await watched(() => dispatch(house, name, input, call));
      times.push(took);
      stretches.push(stretch);
      if (!answer.ok) console.error(`${what}: ${answer.error.message}`);
      reply = answer;
    }
    const started = performance.now();
    const bytes = encodeWire(reply).length;
    const wire = performance.now() - started;
    const typical = median(times);
    console.log(`| ${what} | ${shown(times[0]!)} | ${shown(typical)} | ${shown(Math.max(...times))} | ${shown(median(stretches))} | ${shown(wire)} | ${(bytes / 1024).toFixed(0)} | ${median(stretches) + wire <= LIMIT_MS ? '' : 'over'} |`);
  }
  console.log(`machine’s load ${loadavg()[0]!.toFixed(1)} on ${availableParallelism()} cores; ${rounds} rounds; limit ${LIMIT_MS} ms at a stretch, the bytes of the answer included`);
  casebook.close();
} finally {
  if (values.folder === undefined) rmSync(folder, { recursive: true, force: true });
}

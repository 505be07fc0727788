/**
 * Analyses 1,000 made files as the window sends them over the loopback host (chunks, the loopback host's own form, worker threads) and prints how long the
 * main thread was ever kept from its loop. Needs the built worker: run after a build, with the project's own Node.
 *
 *     node tests/bench/batch-stall.ts [files] [threads]
 */
import { existsSync } from 'node:fs';
import { loadavg } from 'node:os';
import path from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { decodeWire, encodeWire } from '../../app/contract/wire.ts';
import { contract, type ParsedInput } from '../../app/contract/index.ts';
import { emissionInstrument } from '../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../app/spectra/simulate/photoluminescence.ts';
import { simulatedStone } from '../../app/spectra/simulate/stone.ts';
import { createBatchServices } from '../../main/services/batch.ts';
import { createTaskPool } from '../../main/workers/task-pool.ts';

const LIMIT_MS = 50;
const CHUNK = { files: 12, bytes: 400_000 };
const files = Number(process.argv[2] ?? 1000);
const threads = Number(process.argv[3] ?? 2);
const worker = path.resolve(import.meta.dirname, '../../dist/main/worker.cjs');
if (!existsSync(worker)) throw new Error('build first: npm run build');

const stone = simulatedStone('natural-ia', 1);
const texts = Array.from({ length: 20 }, (_, seed) => {
  const { x, y } = simulatePhotoluminescence(stone, emissionInstrument({ points: 2048 }), seed);
  return new TextEncoder().encode(`Wavelength (nm)\tCounts\n${Array.from(x, (v, i) => `${v.toFixed(4)}\t${y[i]}`).join('\n')}\n`);
});
const pool = createTaskPool({ workerFile: worker, size: threads });
const services = createBatchServices({ pool, casebook: () => null });
const parameters = contract['batch.analyse'].input.shape.parameters.parse({ method: 'photoluminescence', laserNm: 532 });

/** The chunks as they travel, made beforehand: in the product the window makes them, in another process. */
const chunks: Uint8Array[] = [];
for (let at = 0; at < files;) {
  const chunk: { name: string; bytes: Uint8Array }[] = [];
  for (let size = 0; at < files && chunk.length < CHUNK.files && size < CHUNK.bytes; at++) {
    chunk.push({ name: `made ${at}.txt`, bytes: texts[at % texts.length]! });
    size += texts[at % texts.length]!.byteLength;
  }
  chunks.push(encodeWire({ task: 'bench', files: chunk, parameters }));
}

/** Longest stretch of the main thread's own work at a time, ms of its processor time: what other programs take does not count. */
let longest = 0;
function timed<T>(work: () => T): T {
  const before = process.threadCpuUsage();
  const value = work();
  const { user, system } = process.threadCpuUsage(before);
  longest = Math.max(longest, (user + system) / 1000);
  return value;
}

const delay = monitorEventLoopDelay({ resolution: 1 });
const started = performance.now();
let rows = 0;
delay.enable();
for (const chunk of chunks) {
  const input = timed(() => contract['batch.analyse'].input.parse(decodeWire(chunk))) as ParsedInput<'batch.analyse'>;
  const outcome = await services['batch.analyse'](input, { session: { personId: 'x' }, signal: new AbortController().signal, emit: () => undefined });
  if (!outcome.ok) throw new Error(outcome.error.message);
  const { value } = outcome;
  timed(() => encodeWire(contract['batch.analyse'].output.parse(value)));
  rows += value.length;
}
delay.disable();
await pool.close();
const seconds = (performance.now() - started) / 1000;
const most = delay.max / 1e6;
process.stdout.write(`${rows} curves of ${files} files in ${seconds.toFixed(1)} s (${(rows / seconds).toFixed(0)} a second, ${threads} threads); main thread kept at most ${most.toFixed(1)} ms, 99 % below ${(delay.percentile(99) / 1e6).toFixed(1)} ms, limit ${LIMIT_MS} ms; its own longest piece of work ${longest.toFixed(1)} ms; load of the machine ${loadavg()[0]!.toFixed(1)}\n`);
process.exitCode = most <= LIMIT_MS ? 0 : 1;

import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import path from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { parseArgs } from 'node:util';
import { placer } from '../../../app/images/placement.ts';
import { releasePoints } from '../../../main/images/release-points.ts';
import { createTaskPool } from '../../../main/workers/task-pool.ts';
import { buffersOf } from '../../../main/workers/task.ts';
import { benchPiece, COUNT, HEIGHT, SHIFT, WIDTH } from './piece.ts';

/**
 * A pair of 24-megapixel photographs with 60 stones, from the bytes of the files to the ratios, in the program's own two workers,
 * beside a plain decode of the same files by the same library. Needs the built worker.
 */
const { values } = parseArgs({ options: { rounds: { type: 'string', default: '5' } } });
const rounds = Math.max(1, Number(values.rounds));
const worker = path.resolve(import.meta.dirname, '../../../dist/main/worker.cjs');
if (!existsSync(worker)) throw new Error('build first: npm run build');

const piece = benchPiece();
const marks = piece.stones.map(({ x, y, radius }, i) => ({ id: `m${i}`, number: i + 1, stoneId: null, x: (x + 0.5) / WIDTH, y: (y + 0.5) / HEIGHT, radius: radius / WIDTH }));
const folder = mkdtempSync(path.join(tmpdir(), 'culet-bench-'));
// In a process of its own: what making them takes is not the program's.
execFileSync(process.execPath, [path.join(import.meta.dirname, 'make-pair.ts'), folder], { stdio: 'inherit' });
const longFile = new Uint8Array(readFileSync(path.join(folder, 'long-wave.jpg')));
const shortFile = new Uint8Array(readFileSync(path.join(folder, 'short-wave.jpg')));
rmSync(folder, { recursive: true });
const made = process.memoryUsage.rss();

const pool = createTaskPool({ workerFile: worker, size: 2 });
const decode = async (bytes: Uint8Array) => {
  const outcome = await pool.run('decode-photograph', { bytes });
  if (!outcome.ok || !outcome.value.ok) throw new Error('not decoded');
  return outcome.value.value.photograph;
};
const median = (times: number[]): number => times.sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
let peak = 0;
const watching = setInterval(() => { peak = Math.max(peak, process.memoryUsage.rss()); }, 10);

// Both workers are started and their decoder compiled before anything is counted, as in a program that is open.
(await Promise.all([decode(longFile), decode(shortFile)])).forEach(releasePoints);
const [plain, whole]: [number[], number[]] = [[], []];
let [worst, longest] = [0, 0];
let out: number[] = [];
for (let round = 0; round < rounds; round++) {
  let started = performance.now();
  const decoded = await Promise.all([decode(longFile), decode(shortFile)]);
  plain.push(performance.now() - started);
  decoded.forEach(releasePoints);
  const delay = monitorEventLoopDelay({ resolution: 1 });
  delay.enable();
  started = performance.now();
  const [longWave, shortWave] = await Promise.all([decode(longFile), decode(shortFile)]);
  const compared = await pool.run('compare-pair', { longWave: longWave!, shortWave: shortWave!, marks, ground: null, stops: 0.5, stopsFrom: 'stated' }, { transfers: buffersOf([longWave!.data, shortWave!.data]) });
  whole.push(performance.now() - started);
  delay.disable();
  longest = Math.max(longest, delay.max / 1e6);
  if (!compared.ok || !compared.value.ok) throw new Error('not compared');
  const { alignment, stones } = compared.value.value.result;
  const [found, truth] = [placer(alignment.placement, WIDTH, HEIGHT), placer({ ...SHIFT, scale: 1 }, WIDTH, HEIGHT)];
  worst = Math.max(...piece.stones.map(({ x, y }) => { const [[fx, fy], [tx, ty]] = [found(x, y), truth(x, y)]; return Math.hypot(fx - tx, fy - ty); }));
  out = stones.filter((stone) => stone.standsOut).map((stone) => stone.number);
}
clearInterval(watching);
await pool.close();
const [base, pair] = [median(plain), median(whole)];
console.log(`${COUNT} stones on two photographs of ${WIDTH} × ${HEIGHT}, JPEG ${(longFile.length / 1e6).toFixed(1)} and ${(shortFile.length / 1e6).toFixed(1)} MB; median of ${rounds} rounds; load of the machine ${loadavg()[0]!.toFixed(1)}`);
console.log(`plain decode of both, two workers    ${(base / 1000).toFixed(2)} s`);
console.log(`decode, align, measure, compare      ${(pair / 1000).toFixed(2)} s, ${(pair / base).toFixed(1)} × the plain decode; limit 3 s`);
console.log(`alignment wrong by at most ${worst.toFixed(3)} points; stones that stand out: ${out.join(', ')} (planted: 8, 32)`);
console.log(`peak of resident memory ${(peak / 1e6).toFixed(0)} MB, of which ${(made / 1e6).toFixed(0)} MB before the workers began; longest pause of the main thread ${longest.toFixed(0)} ms`);

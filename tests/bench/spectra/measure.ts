import { Worker } from 'node:worker_threads';
import { nonNegativeSolver } from '../../../app/infrared/non-negative-least-squares.ts';
import { DETECTION } from '../../../app/spectra/analyse-spectrum.ts';
import { detectLines } from '../../../app/spectra/detect-lines.ts';
import { gaussian } from '../../../app/spectra/simulate/line-shapes.ts';
import { seededRandom } from '../../../app/spectra/simulate/seeded-random.ts';
import type { Infrared, Luminescence } from './data.ts';
import { readCurve, type Reading } from './pipeline.ts';

const WARM_UP = 300;
/** Passes over the data; the fastest counts, since a shared machine only ever adds time. */
const PASSES = 3;

function fastest(passes: number, pass: () => void): number {
  let best = Infinity;
  for (let k = 0; k < passes; k++) {
    const started = performance.now();
    pass();
    best = Math.min(best, performance.now() - started);
  }
  return best;
}

/** One thread over all curves: ms a curve, and what they gave. */
export function measureOneThread({ x, curves, table }: Luminescence): { readonly msPerCurve: number; readonly readings: readonly Reading[] } {
  for (const y of curves.slice(0, WARM_UP)) readCurve(x, y, table);
  let readings: Reading[] = [];
  const ms = fastest(PASSES, () => { readings = curves.map((y) => readCurve(x, y, table)); });
  return { msPerCurve: ms / curves.length, readings };
}

/** Some threads over all curves, started together when all are warm: ms a curve of the whole. */
export async function measureThreads({ curves, shared, table }: Luminescence, count: number): Promise<number> {
  const workers = Array.from({ length: count }, (_, first) => new Worker(new URL('./read-worker.ts', import.meta.url), { workerData: { shared, table, first, of: count } }));
  const heard = (worker: Worker): Promise<void> => new Promise((resolve, reject) => { worker.once('message', () => resolve()); worker.once('error', reject); });
  await Promise.all(workers.map(heard));
  let best = Infinity;
  for (let k = 0; k < PASSES; k++) {
    const started = performance.now();
    const all = Promise.all(workers.map(heard));
    for (const worker of workers) worker.postMessage('go');
    await all;
    best = Math.min(best, performance.now() - started);
  }
  await Promise.all(workers.map((worker) => worker.terminate()));
  return best / curves.length;
}

/** Infrared components of all curves: ms a curve, the columns' preparation included, and five coefficients to a curve. */
export function measureInfrared({ components, curves }: Infrared): { readonly msPerCurve: number; readonly coefficients: Float64Array } {
  const p = components.length;
  const coefficients = new Float64Array(p * curves.length);
  const ms = fastest(2 * PASSES, () => {
    const solver = nonNegativeSolver(components, components.map(() => false));
    curves.forEach((y, k) => solver.coefficients(y, coefficients.subarray(k * p, (k + 1) * p)));
  });
  return { msPerCurve: ms / curves.length, coefficients };
}

/** A curve of this many points with a line every 60 nm, the same to the eye whatever its points. */
function curveOf(points: number): { readonly x: Float64Array; readonly y: Float64Array } {
  const r = seededRandom(points);
  const x = Float64Array.from({ length: points }, (_, i) => 300 + (700 * i) / (points - 1));
  return { x, y: x.map((nm) => { let light = 800; for (let at = 340; at < 980; at += 60) light += 4000 * gaussian(nm, at, 3); return light + 30 * r.normal(); }) };
}

/** Cost against the number of points: ms a curve for each. */
export function measurePoints(sizes: readonly number[]): readonly { readonly points: number; readonly ms: number }[] {
  return sizes.map((points) => {
    const { x, y } = curveOf(points);
    const repeats = Math.max(8, Math.round(800_000 / points));
    const pass = (): void => { for (let k = 0; k < repeats; k++) detectLines(x, y, { resolution: null, ...DETECTION.photoluminescence }); };
    pass();
    return { points, ms: fastest(PASSES, pass) / repeats };
  });
}

/** Lines found in curves that hold noise alone, for each of some levels of light: what the thresholds let through. */
export function measureFalseAlarms(curves: number): { readonly curves: number; readonly lines: number } {
  const r = seededRandom(41);
  const x = Float64Array.from({ length: 3600 }, (_, i) => 540 + i / 10);
  let lines = 0;
  for (let k = 0; k < curves; k++) {
    const level = r.logBetween(50, 20_000);
    const tilt = r.between(-0.3, 0.3) * level;
    const y = x.map((_, i) => { const light = level + (tilt * i) / x.length; return light + Math.sqrt(light) * r.normal() + 8 * r.normal(); });
    lines += detectLines(x, y, { resolution: 0.5, ...DETECTION.photoluminescence }).lines.length;
  }
  return { curves, lines };
}

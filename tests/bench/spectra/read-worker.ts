import { parentPort, workerData } from 'node:worker_threads';
import { POINTS, rows, type TableLine } from './data.ts';
import { readCurve } from './pipeline.ts';

/** Reads every `of`-th curve once to warm up, says so, and again at each word `go`. */
const { shared, table, first, of } = workerData as { shared: SharedArrayBuffer; table: readonly TableLine[]; first: number; of: number };
const values = new Float64Array(shared);
const x = values.subarray(0, POINTS);
const mine = rows(values, POINTS, 1).filter((_, k) => k % of === first);
const readAll = (count: number): void => { for (const y of mine.slice(0, count)) readCurve(x, y, table); };

readAll(400);
parentPort!.on('message', () => {
  readAll(mine.length);
  parentPort!.postMessage('done');
});
parentPort!.postMessage('ready');

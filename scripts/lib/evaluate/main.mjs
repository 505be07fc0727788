import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { Worker } from 'node:worker_threads';
import { appModule } from './app-module.mjs';
import { main, say, Stop } from '../say.mjs';

const USAGE = 'npm run evaluate -- [--stones N] [--measured N] [--seed S] [--json]';
const MOST_WORKERS = 8;

/** @param {string | undefined} text @param {number} usual @param {number} least @param {string} name */
function whole(text, usual, least, name) {
  if (text === undefined) return usual;
  const value = Number(text);
  if (!Number.isSafeInteger(value) || value < least) throw new Stop(`--${name} needs a whole number of at least ${least}. ${USAGE}`);
  return value;
}

/** @param {object} plan @returns {Promise<any>} what one part gave */
function runInWorker(plan) {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./worker.mjs', import.meta.url), { workerData: plan });
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => { if (code !== 0) reject(new Error(`a part of the evaluation ended with ${code}`)); });
  });
}

function options() {
  try {
    return parseArgs({ options: { stones: { type: 'string' }, measured: { type: 'string' }, seed: { type: 'string' }, json: { type: 'boolean' }, help: { type: 'boolean' } } }).values;
  } catch (error) {
    throw new Stop(`${error instanceof Error ? error.message : String(error)} ${USAGE}`);
  }
}

await main(async () => {
  const stated = options();
  if (stated.help === true) {
    console.log(USAGE);
    return 0;
  }
  const { EVALUATION_DEFAULTS } = await appModule('run-part.ts');
  const { evaluationReport, reportText } = await appModule('evaluation-report.ts');
  const seed = whole(stated.seed, EVALUATION_DEFAULTS.seed, 0, 'seed');
  const sampled = whole(stated.stones, EVALUATION_DEFAULTS.stones, 1, 'stones');
  const measured = whole(stated.measured, EVALUATION_DEFAULTS.measured, 0, 'measured');
  const of = Math.min(MOST_WORKERS, availableParallelism());
  const begun = Date.now();
  const parts = await Promise.all(Array.from({ length: of }, (_, part) => runInWorker({ seed, sampled, measured, part, of })));
  const report = evaluationReport(seed, parts);
  console.log(stated.json === true ? JSON.stringify(report, null, 2) : reportText(report));
  say(`${sampled + measured} stones in ${((Date.now() - begun) / 1000).toFixed(0)} s`);
  return report.targets.every((/** @type {{ met: boolean }} */ target) => target.met) ? 0 : 1;
});

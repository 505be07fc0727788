import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { cacheFolder, inRoot } from './paths.mjs';
import { ensureBuilt, runOnProjectNode } from './prepare.mjs';
import { say, Stop } from './say.mjs';

/** @typedef {{ passed: number, failed: number, skipped: number }} Count */
/** @typedef {{ name: string, title: string, run: () => Promise<Count> }} Step */

const PASSED = { passed: 1, failed: 0, skipped: 0 };
const FAILED = { passed: 0, failed: 1, skipped: 0 };

/** @param {...Count} counts @returns {Count} */
export function sum(...counts) {
  return counts.reduce((all, one) => ({
    passed: all.passed + one.passed, failed: all.failed + one.failed, skipped: all.skipped + one.skipped,
  }), { passed: 0, failed: 0, skipped: 0 });
}

/**
 * What a run of Vitest counted, from its JSON report.
 * @param {any} report the report, or null when the run left none
 * @param {number} code the run's exit code
 * @returns {Count} at least one failure whenever the run did not end well: a file that does not load holds no test to fail
 */
export function countOf(report, code) {
  const count = {
    passed: report?.numPassedTests ?? 0,
    failed: report?.numFailedTests ?? 0,
    skipped: (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0),
  };
  return code !== 0 && count.failed === 0 ? { ...count, failed: 1 } : count;
}

/**
 * The closing line that a reader, or a machine, takes the result from.
 * @param {Count} count
 */
export function closingLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

/** A tool that counts as one check. @param {readonly string[]} args @returns {Promise<Count>} */
async function check(args) {
  const { code } = await runOnProjectNode([inRoot('node_modules', ...(args[0] ?? '').split('/')), ...args.slice(1)]);
  return code === 0 ? PASSED : FAILED;
}

/** @returns {Promise<Count>} */
async function build() {
  try {
    await ensureBuilt();
    return PASSED;
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    say(error.message);
    return FAILED;
  }
}

/** @param {string} project a project of vitest.config.ts @returns {Promise<Count>} */
async function vitest(project) {
  const reports = join(cacheFolder, 'reports');
  mkdirSync(reports, { recursive: true });
  const file = join(reports, `${project}.json`);
  rmSync(file, { force: true });
  const { code } = await runOnProjectNode([
    inRoot('node_modules', 'vitest', 'vitest.mjs'), 'run', '--project', project,
    '--reporter=default', '--reporter=json', `--outputFile.json=${file}`,
  ]);
  return countOf(existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null, code);
}

/** The rooms whose import directions are checked. */
const ROOMS = ['app', 'db', 'main', 'renderer', 'tests'];

/** Everything `npm test` does, in order. Fault and end-to-end tests drive the built program, so the build comes before them. @type {readonly Step[]} */
export const steps = [
  { name: 'typecheck', title: 'Type check', run: () => check(['typescript/bin/tsc', '-b']) },
  { name: 'lint', title: 'Lint', run: () => check(['eslint/bin/eslint.js', '.', '--max-warnings=0']) },
  { name: 'imports', title: 'Import directions', run: () => check(['dependency-cruiser/bin/dependency-cruise.mjs', '--config', '.dependency-cruiser.cjs', ...ROOMS]) },
  { name: 'build', title: 'Build', run: build },
  { name: 'unit', title: 'Unit tests', run: () => vitest('unit') },
  { name: 'reference', title: 'Reference tests', run: () => vitest('reference') },
  { name: 'faults', title: 'Fault tests', run: () => vitest('faults') },
  { name: 'e2e', title: 'End-to-end tests', run: () => vitest('e2e') },
];

/**
 * The steps that `--only a,b` asks for; all without it. Steps that drive the built program bring the build with them.
 * @param {readonly string[]} args the command line
 * @returns {readonly Step[]}
 * @throws {Stop} for a word that is no step
 */
export function chosenSteps(args) {
  if (args.length === 0) return steps;
  const [flag = '', list = ''] = args[0]?.includes('=') ? args[0].split('=') : args;
  const names = list.split(',').filter((name) => name !== '');
  const unknown = names.filter((name) => !steps.some((step) => step.name === name));
  if (flag !== '--only' || names.length === 0 || unknown.length > 0) {
    throw new Stop(`Use: npm test -- --only ${steps.map((step) => step.name).join(',')} (any of them)${unknown.length > 0 ? `; there is no ${unknown.join(', ')}` : ''}`);
  }
  const drivesBuild = names.some((name) => name === 'faults' || name === 'e2e');
  return steps.filter((step) => names.includes(step.name) || (drivesBuild && step.name === 'build'));
}

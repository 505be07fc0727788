import { existsSync, readFileSync } from 'node:fs';
import { sep } from 'node:path';
import { inRoot, projectNode } from './paths.mjs';
import { run } from './run.mjs';
import { say, Stop } from './say.mjs';

/** npm's own output goes to stderr, and only what matters of it. */
const QUIET = ['--no-audit', '--no-fund', '--loglevel=error'];

/** @typedef {{ version?: string, integrity?: string, optional?: boolean, devOptional?: boolean, link?: boolean, dependencies?: Record<string, string>, devDependencies?: Record<string, string> }} LockEntry */
/** @typedef {Record<string, LockEntry>} LockEntries */

/** @param {string} file @returns {any} */
const readJson = (file) => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null);

/**
 * Why the installed packages are not those of the lock file, or null when they are.
 * npm keeps a lock file of its own inside node_modules, written when an install has ended well, so an install made by
 * hand counts as much as one made here.
 * @param {LockEntries} wanted `packages` of package-lock.json
 * @param {LockEntries | null} installed `packages` of node_modules/.package-lock.json
 * @returns {string | null}
 */
export function whyStale(wanted, installed) {
  if (installed === null) return 'nothing is installed yet';
  for (const [path, entry] of Object.entries(wanted)) {
    if (path === '') continue;
    const have = installed[path];
    // A package for another system is in the lock file and rightly not here.
    if (have === undefined && (entry.optional || entry.devOptional)) continue;
    const name = path.replace(/^.*node_modules\//, '');
    if (have === undefined) return `${name} is missing`;
    if (have.version !== entry.version || have.integrity !== entry.integrity) return `${name} has another version`;
  }
  // A package more than wanted does no harm, and is no reason to install everything anew.
  return null;
}

/**
 * Whether the lock file knows everything that package.json asks for; npm ci refuses to work where it does not.
 * @param {{ dependencies?: Record<string, string>, devDependencies?: Record<string, string> }} manifest
 * @param {LockEntries} wanted
 */
export function lockFits(manifest, wanted) {
  const top = { ...wanted['']?.dependencies, ...wanted['']?.devDependencies };
  return Object.entries({ ...manifest.dependencies, ...manifest.devDependencies }).every(([name, range]) => top[name] === range);
}

/** Runs npm with the Node that started it, where npm told which one that was. @param {readonly string[]} args */
function npm(args) {
  const cli = process.env['npm_execpath'];
  /** @type {import('node:child_process').StdioOptions} */
  const stdio = ['ignore', 2, 2];
  // The project's own Node is about to be replaced, so npm runs on the one it came with.
  if (cli?.endsWith('.js')) return run(process.env['npm_node_execpath'] ?? process.execPath, [cli, ...args], { stdio, env: process.env });
  return run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, { stdio, env: process.env });
}

async function install() {
  // Windows cannot delete a program that runs; there the packages are brought up to date in place.
  const runsInside = process.platform === 'win32' && process.execPath.startsWith(inRoot('node_modules') + sep);
  if (!runsInside && (await npm(['ci', ...QUIET])).code === 0) return;
  if (!runsInside) say('npm ci did not succeed: trying npm install once, which may bring package-lock.json up to date');
  if ((await npm(['install', ...QUIET])).code !== 0) {
    throw new Stop('The packages could not be installed. Read npm\'s message above; with a working network, `npm ci` in this folder should succeed.');
  }
}

async function ensureProjectNode() {
  if (projectNode() !== null) return;
  say('Fetching the project\'s own Node (the package\'s install script did not run)');
  await npm(['rebuild', 'node', ...QUIET]);
  if (projectNode() !== null) return;
  throw new Stop('The project\'s own Node is missing: its install script was not allowed to run. Run `npm ci --ignore-scripts=false`, then try again.');
}

/** Brings node_modules to what the lock file says, when it is not. @throws {Stop} when that cannot be done */
export async function ensureInstalled() {
  const manifest = readJson(inRoot('package.json'));
  const wanted = readJson(inRoot('package-lock.json'))?.packages ?? null;
  const reason = wanted === null ? 'there is no package-lock.json'
    : whyStale(wanted, readJson(inRoot('node_modules', '.package-lock.json'))?.packages ?? null)
      ?? (lockFits(manifest, wanted) ? null : 'package.json asks for something that package-lock.json does not know');
  if (reason !== null) {
    say(`Installing packages (${reason})`);
    await install();
  }
  await ensureProjectNode();
}

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fingerprint } from './fingerprint.mjs';
import { ensureInstalled } from './install.mjs';
import { alone } from './lock.mjs';
import { builtCommandLine, cacheFolder, inRoot, projectNode, root } from './paths.mjs';
import { run } from './run.mjs';
import { say, Stop } from './say.mjs';

/** What the built program is made from. */
const SOURCES = ['app', 'db', 'main', 'renderer', 'assets', 'package.json', 'package-lock.json', 'scripts/lib/bundle'];

const stamp = inRoot('dist', 'build-stamp.txt');

/** @returns {string | null} */
const builtFrom = () => (existsSync(stamp) && existsSync(builtCommandLine) ? readFileSync(stamp, 'utf8') : null);

/**
 * Builds the program into dist/.
 * @param {{ evenWhenFresh?: boolean }} [options] by default only when its sources changed since the last build
 * @throws {Stop} when the build fails
 */
export async function ensureBuilt({ evenWhenFresh = false } = {}) {
  if (!evenWhenFresh && builtFrom() === fingerprint(root, SOURCES)) return;
  await alone(join(cacheFolder, 'build.lock'), async () => {
    const now = fingerprint(root, SOURCES);
    if (!evenWhenFresh && builtFrom() === now) return;
    say('Building');
    const { code } = await runOnProjectNode([inRoot('scripts', 'lib', 'bundle', 'bundle-all.mjs')], { stdio: ['ignore', 2, 2] });
    if (code !== 0) throw new Stop('The program could not be built: the message above names the file.');
    // Stamped with what was there before the build: an edit made meanwhile is built next time.
    mkdirSync(dirname(stamp), { recursive: true });
    writeFileSync(stamp, now);
  });
}

/**
 * Runs a script on the project's own Node, which alone may load the database.
 * @param {readonly string[]} args script and its arguments
 * @param {import('./run.mjs').RunOptions} [options]
 */
export function runOnProjectNode(args, options) {
  const node = projectNode();
  if (node === null) throw new Stop('The project\'s own Node is missing. Run `npm ci` in this folder, then try again.');
  return run(node, args, options);
}

/** Installs and builds what is missing or stale, with one line for each thing done and none when all is in order. */
export async function prepare() {
  await ensureInstalled();
  await ensureBuilt();
}

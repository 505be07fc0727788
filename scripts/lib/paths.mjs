import { existsSync } from 'node:fs';
import { delimiter, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The repository's top folder, wherever the command was given. */
export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** A path inside the repository. @param {string[]} parts */
export const inRoot = (...parts) => join(root, ...parts);

/** The built command line; the loopback host is one of its commands. */
export const builtCommandLine = inRoot('dist', 'main', 'culet.cjs');

/** Things made once and kept between runs; goes away with node_modules. */
export const cacheFolder = inRoot('node_modules', '.cache', 'culet');

/**
 * The Node that comes with the project as a package, or null when it is not there.
 * The database binding aborts on Node < 22, so nothing that opens a casebook runs on another one.
 * @returns {string | null}
 */
export function projectNode() {
  const file = inRoot('node_modules', 'node', 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
  return existsSync(file) ? file : null;
}

/**
 * The environment for the project's own tools: its Node comes first on the path.
 * @param {NodeJS.ProcessEnv} [extra]
 * @returns {NodeJS.ProcessEnv}
 */
export function toolEnvironment(extra = {}) {
  // Windows spells the variable "Path"; a second spelling would shadow the first.
  const key = Object.keys(process.env).find((name) => name.toUpperCase() === 'PATH') ?? 'PATH';
  const first = inRoot('node_modules', '.bin');
  return { ...process.env, [key]: [first, process.env[key] ?? ''].join(delimiter), ...extra };
}

/**
 * The folder that relative file names on the command line mean: where the person stood when they typed them.
 * npm runs its scripts in the repository's folder and tells the other one in INIT_CWD.
 */
export function callersFolder() {
  const throughNpm = ['start', 'demo', 'culet'].includes(process.env['npm_lifecycle_event'] ?? '') && process.cwd() === root;
  return (throughNpm ? process.env['INIT_CWD'] : undefined) ?? process.cwd();
}

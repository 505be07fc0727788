import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const ROOT = path.resolve(import.meta.dirname, '../../../..');
/** Inside the packages' folder, so that the database's binding is found from there. */
const FOLDER = path.join(ROOT, 'node_modules', '.cache', 'culet', 'verify-helpers');

/**
 * The helpers that verify, each in one file: from source every one of the some hundred that the tests start would read the whole program anew,
 * a second of processor time. worker: address for threads; entry: path for processes.
 */
export async function bundledHelpers(): Promise<{ readonly worker: string; readonly entry: string }> {
  await build({
    configFile: false, logLevel: 'silent', root: ROOT, publicDir: false, ssr: { target: 'node', noExternal: true, external: ['better-sqlite3'] },
    build: {
      ssr: true, outDir: FOLDER, emptyOutDir: true, target: 'node20', minify: false,
      rolldownOptions: {
        input: { worker: path.join(ROOT, 'main', 'verify', 'verify-worker.ts'), entry: path.join(import.meta.dirname, 'helper-entry.ts') },
        external: ['better-sqlite3', /^node:/], output: { format: 'es', entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
      },
    },
  });
  return { worker: pathToFileURL(path.join(FOLDER, 'worker.mjs')).href, entry: path.join(FOLDER, 'entry.mjs') };
}

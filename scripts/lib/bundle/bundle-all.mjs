import { cpSync, existsSync, readFileSync, rmSync } from 'node:fs';
import { build } from 'vite';
import { mainConfig, preloadConfig, rendererConfig } from './configs.mjs';
import { copyPrintedFonts } from './fonts.mjs';
import { copyPdfkitData } from './pdfkit.mjs';
import { strayRequires } from './stray-requires.mjs';
import { inRoot } from '../paths.mjs';
import { main, Stop } from '../say.mjs';

/** What Electron lets a sandboxed preload require (its guide on process sandboxing). */
const PRELOAD_MAY_REQUIRE = ['electron', 'events', 'timers', 'url', 'node:events', 'node:timers', 'node:url'];

/** Copies a folder afresh; a folder that is not there is no error. @param {string} from @param {string} to */
function copyFolder(from, to) {
  rmSync(to, { recursive: true, force: true });
  if (existsSync(from)) cpSync(from, to, { recursive: true });
}

/** Builds one bundle; a fault in a source file is told with its place and without the bundler's own stack. @param {import('vite').InlineConfig} config */
async function bundle(config) {
  try {
    await build(config);
  } catch (error) {
    throw error instanceof Error && 'errors' in error ? new Stop(error.message) : error;
  }
}

await main(async () => {
  process.env['NODE_ENV'] = 'production';
  // The stamp of the build before must not vouch for a half-finished one.
  rmSync(inRoot('dist', 'build-stamp.txt'), { force: true });
  for (const config of [mainConfig, preloadConfig, rendererConfig]) await bundle(config);
  copyFolder(inRoot('db', 'migrations'), inRoot('dist', 'main', 'migrations'));
  copyFolder(inRoot('assets'), inRoot('dist', 'assets'));
  await copyPrintedFonts(inRoot('dist', 'assets', 'fonts'));
  copyPdfkitData(inRoot('dist', 'main'));
  const stray = strayRequires(readFileSync(inRoot('dist', 'main', 'preload.cjs'), 'utf8'), PRELOAD_MAY_REQUIRE);
  if (stray.length > 0) {
    throw new Stop(`The preload would load ${stray.join(', ')}, which a sandboxed preload cannot: import types only there.`);
  }
  return 0;
});

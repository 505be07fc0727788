#!/usr/bin/env node
import { display, fetchElectron, installedElectron, startsAtAll } from './lib/electron.mjs';
import { builtCommandLine, callersFolder, root, toolEnvironment } from './lib/paths.mjs';
import { prepare, runOnProjectNode } from './lib/prepare.mjs';
import { run } from './lib/run.mjs';
import { main, say } from './lib/say.mjs';

/** Electron that fails sooner than this has not shown a window: a missing sandbox helper, a display that refuses. */
const NEVER_OPENED_MS = 8_000;

/** Why the window cannot be Electron's, or the program that shows it. */
async function usableElectron() {
  const shown = await display();
  if (!shown.ok) return shown;
  const here = installedElectron();
  const found = here.ok || process.env['ELECTRON_OVERRIDE_DIST_PATH'] ? here : await fetchElectron();
  return found.ok ? startsAtAll(found.value) : found;
}

/** @param {string} program @param {readonly string[]} args */
async function openWindow(program, args) {
  const asRoot = process.platform === 'linux' && process.getuid?.() === 0;
  if (asRoot) say('Running as root: Electron\'s sandbox is off (--no-sandbox)');
  const env = toolEnvironment();
  delete env['ELECTRON_RUN_AS_NODE'];
  return run(program, [root, ...(asRoot ? ['--no-sandbox'] : []), ...args], { env, cwd: callersFolder() });
}

await main(async () => {
  const args = process.argv.slice(2);
  await prepare();
  const electron = await usableElectron();
  let reason = electron.ok ? '' : electron.reason;
  if (electron.ok) {
    const started = Date.now();
    const { code } = await openWindow(electron.value, args);
    const interrupted = code === 130 || code === 143;
    if (code === 0 || interrupted || Date.now() - started > NEVER_OPENED_MS) return code;
    reason = `Electron ended at once with code ${code}`;
  }
  say('Serving the window on this machine only, at 127.0.0.1.');
  return (await runOnProjectNode([builtCommandLine, 'serve', '--open', '--note', `Shown in a browser because ${reason}.`, ...args], { cwd: callersFolder() })).code;
});

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { packagedChromium } from './packaged-chromium.ts';

/** A browser that can be started, with what must be added to its environment. */
export type Browser = { readonly program: string; readonly env: Readonly<Record<string, string>>; readonly name: string };

/** Nothing but the page under test: no first-run pages, no updates, no calls home. Playwright adds --no-sandbox by itself. */
export const QUIET_FLAGS: readonly string[] = [
  '--no-first-run', '--no-default-browser-check', '--no-pings', '--disable-background-networking', '--disable-component-update',
  '--disable-domain-reliability', '--disable-sync', '--disable-quic', '--disable-default-apps', '--disable-dev-shm-usage',
  '--metrics-recording-only', '--font-render-hinting=none', '--force-color-profile=srgb',
];

const COMMANDS = ['google-chrome', 'google-chrome-stable', 'chromium', 'chromium-browser'];

const USUAL_PLACES: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  darwin: ['Google Chrome', 'Chromium', 'Microsoft Edge'].map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`),
  win32: ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => {
    const base = process.env[name];
    return base === undefined ? [] : [join(base, 'Google/Chrome/Application/chrome.exe'), join(base, 'Microsoft/Edge/Application/msedge.exe')];
  }),
};

function candidates(): string[] {
  const onPath = process.platform !== 'linux' ? []
    : (process.env['PATH'] ?? '').split(delimiter).flatMap((folder) => COMMANDS.map((name) => join(folder, name)));
  return [...onPath, ...(USUAL_PLACES[process.platform] ?? [])].filter((file) => existsSync(file));
}

/** On some systems the command is a stub that asks to install something else; on Windows asking would open a window. */
function tellsItsVersion(program: string): boolean {
  if (process.platform !== 'linux') return true;
  return spawnSync(program, ['--version'], { timeout: 15_000 }).status === 0;
}

/**
 * A Chromium for the end-to-end tests: the one CHROME_PATH names, else an installed one, else the one in the packages.
 * @throws when there is none; the sentence says what to do
 */
export async function findChromium(): Promise<Browser> {
  const named = process.env['CHROME_PATH'];
  if (named !== undefined && named !== '') {
    if (!existsSync(named)) throw new Error(`CHROME_PATH names ${named}, which is not there. Name a Chrome or Chromium program, or unset it.`);
    return { program: named, env: {}, name: named };
  }
  const installed = candidates().find(tellsItsVersion);
  if (installed !== undefined) return { program: installed, env: {}, name: installed };
  if (process.platform === 'linux' && process.arch === 'x64') return packagedChromium();
  throw new Error('No Chrome or Chromium was found. Install one, or name its program in CHROME_PATH.');
}

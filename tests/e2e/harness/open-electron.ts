import { _electron, errors, type ElectronApplication } from 'playwright-core';
import { root, toolEnvironment } from '../../../scripts/lib/paths.mjs';
import type { Opened, Settings } from './launch.ts';
import { VIEW_SIZE } from './take-view.ts';
import { watchPage } from './watch-page.ts';

const LIMIT_MS = { attach: 40_000, open: 60_000, close: 15_000 };
/** The keyring of whoever runs the tests on a Linux desktop is left alone. */
const NO_STORE = '--password-store=basic';
/** Now and then the driver misses the start of the program and waits in vain, though the window is up: then it is started again. */
const ATTEMPTS = 2;

async function launch(options: NonNullable<Parameters<typeof _electron.launch>[0]>): Promise<ElectronApplication> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await _electron.launch(options);
    } catch (error) {
      if (attempt >= ATTEMPTS || !(error instanceof errors.TimeoutError)) throw error;
      console.log('The driver did not get hold of Electron in time; it is started once more.');
    }
  }
}

/** Opens the built program in Electron, as `npm start` does, with a data folder of its own. */
export async function openElectron(settings: Settings, program: string): Promise<Opened> {
  const asRoot = process.platform === 'linux' && process.getuid?.() === 0;
  const env = { ...toolEnvironment({ TZ: 'UTC', LANG: 'C.UTF-8', ...settings.env }) } as Record<string, string>;
  delete env['ELECTRON_RUN_AS_NODE'];
  const electron = await launch({
    executablePath: program, cwd: root, env, timeout: LIMIT_MS.attach,
    args: [
      '.', ...(asRoot ? ['--no-sandbox'] : []), ...(settings.args.some((one) => one.startsWith('--password-store=')) ? [] : [NO_STORE]), `--data=${settings.dataDir}`,
      ...(settings.casebook === undefined ? [] : [`--casebook=${settings.casebook}`]), ...settings.args,
    ],
  });
  const child = electron.process();
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (bytes: Buffer) => { said += bytes.toString('utf8'); });
  /** A program that does not quit must not hold up the run; it is ended, and the log says so. */
  const close = async () => {
    const insist = setTimeout(() => { said += '\nharness: Electron did not quit and was ended\n'; child.kill('SIGKILL'); }, LIMIT_MS.close);
    await electron.close().catch(() => undefined);
    clearTimeout(insist);
  };
  try {
    const page = await electron.firstWindow({ timeout: LIMIT_MS.open });
    const watch = watchPage(page);
    await electron.evaluate(({ BrowserWindow }, size) => {
      BrowserWindow.getAllWindows()[0]?.setContentSize(size.width, size.height);
    }, VIEW_SIZE);
    await page.waitForLoadState('domcontentloaded');
    return { host: 'electron', page, url: page.url(), pid: child.pid ?? 0, electron, log: () => said, ...watch, close };
  } catch (error) {
    await close();
    throw new Error(`Electron showed no window. It said:\n${said}`, { cause: error });
  }
}

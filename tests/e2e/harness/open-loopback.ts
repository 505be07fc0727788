import { type ChildProcess, spawn } from 'node:child_process';
import { chromium } from 'playwright-core';
import { builtCommandLine, projectNode, root, toolEnvironment } from '../../../scripts/lib/paths.mjs';
import { type Browser, QUIET_FLAGS } from './chromium.ts';
import type { Opened, Settings } from './launch.ts';
import { VIEW_SIZE } from './take-view.ts';
import { watchPage } from './watch-page.ts';

const LIMIT_MS = { open: 30_000, close: 15_000 };

/** The one line that the loopback host prints when it is ready. */
const READY = /^Culet is open at (http:\/\/127\.0\.0\.1:\d+\/\S*)$/m;

/** Waits for the address; what the host said goes into the failure. */
function addressOf(host: ChildProcess, said: () => string): Promise<string> {
  return new Promise((resolve, reject) => {
    const fail = (why: string) => reject(new Error(`The loopback host ${why}. It said:\n${said()}`));
    const timer = setTimeout(() => fail(`was not ready after ${LIMIT_MS.open} ms`), LIMIT_MS.open);
    host.stdout?.on('data', () => {
      const address = READY.exec(said())?.[1];
      if (address !== undefined) { clearTimeout(timer); resolve(address); }
    });
    host.once('close', (code) => { clearTimeout(timer); fail(`ended with code ${code}`); });
  });
}

/** Asks the host to end, as a service manager would, and insists when it does not. Gives its exit code. */
async function end(host: ChildProcess): Promise<number | null> {
  if (host.exitCode !== null || host.signalCode !== null) return host.exitCode;
  const ended = new Promise<number | null>((resolve) => host.once('close', resolve));
  const insist = setTimeout(() => host.kill('SIGKILL'), LIMIT_MS.close);
  host.kill('SIGTERM');
  const code = await ended;
  clearTimeout(insist);
  return code;
}

/** Starts the loopback host on a free port and opens its page in a browser of its own. */
export async function openLoopback(settings: Settings, browser: Browser): Promise<Opened> {
  const node = projectNode();
  if (node === null) throw new Error('The project\'s own Node is missing: run npm ci.');
  const host = spawn(node, [
    builtCommandLine, 'serve', '--data', settings.dataDir, '--port', '0',
    ...(settings.casebook === undefined ? [] : ['--casebook', settings.casebook]), ...settings.args,
  ], { cwd: root, env: toolEnvironment({ TZ: 'UTC', ...settings.env }), stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  for (const stream of [host.stdout, host.stderr]) stream?.on('data', (bytes: Buffer) => { said += bytes.toString('utf8'); });
  try {
    const url = await addressOf(host, () => said);
    const program = await chromium.launch({ executablePath: browser.program, args: [...QUIET_FLAGS], env: { ...process.env, ...browser.env } as Record<string, string> });
    const context = await program.newContext({ viewport: VIEW_SIZE, locale: 'en-GB', timezoneId: 'UTC', acceptDownloads: true });
    const page = await context.newPage();
    const watch = watchPage(page);
    await page.goto(url);
    return {
      host: 'loopback', page, url, pid: host.pid ?? 0, electron: null, log: () => said, ...watch,
      close: async () => { await program.close(); await end(host); },
    };
  } catch (error) {
    await end(host);
    throw error;
  }
}

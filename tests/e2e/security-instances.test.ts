import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { builtCommandLine, projectNode, root, toolEnvironment } from '../../scripts/lib/paths.mjs';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { PASSWORD } from './steps/sign-in.ts';

type Ended = { readonly code: number | null; readonly said: string };

/** Runs a program to its end. */
function runToEnd(program: string, args: readonly string[]): Promise<Ended> {
  return new Promise((resolve) => {
    const env = toolEnvironment() as NodeJS.ProcessEnv;
    delete env['ELECTRON_RUN_AS_NODE'];
    const child = spawn(program, args, { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (bytes: Buffer) => { said += bytes.toString('utf8'); });
    child.once('close', (code) => { resolve({ code, said }); });
  });
}

const asRoot = process.platform === 'linux' && process.getuid?.() === 0;
const serveOn = (dataDir: string) => runToEnd(projectNode()!, [builtCommandLine, 'serve', '--data', dataDir, '--port', '0']);

/** Starts a casebook in the window's own name, through its door. */
async function startCasebook({ page, host }: OpenCulet): Promise<void> {
  const input = { name: 'Invented Laboratory', address: '', zone: 'UTC', logo: null, person: { name: 'Ada Invented', initials: 'AI', roles: ['manager'], password: PASSWORD } };
  const reply = await page.evaluate(async ({ input, electron }) => {
    if (electron) return (window as unknown as { culet: { call(name: string, input: unknown): Promise<{ ok: boolean }> } }).culet.call('casebook.create', input);
    return (await fetch('/call/casebook.create', { method: 'POST', headers: { 'content-type': 'application/octet-stream' }, body: JSON.stringify(input) })).json() as Promise<{ ok: boolean }>;
  }, { input, electron: host === 'electron' });
  expect(reply).toMatchObject({ ok: true });
}

describe.each(availableHosts())('a second program on the data of one in %s', (host) => {
  let culet: OpenCulet;
  beforeAll(async () => {
    culet = await openCulet({ host });
    await startCasebook(culet);
  });
  afterAll(async () => { await culet.close(); });

  test('that would serve the window says who has the casebook, and leaves', async () => {
    const { code, said } = await serveOn(culet.dataDir);
    expect(code).toBe(1);
    expect(said).toContain(`The casebook ${join(culet.dataDir, 'Casebook.culet')} is open in another program.`);
    expect(said).not.toContain('Culet is open at');
  });

  test.runIf(host === 'electron')('in Electron brings the first window to the front and leaves', async () => {
    await culet.electron!.evaluate(({ BrowserWindow }) => { BrowserWindow.getAllWindows()[0]!.minimize(); });
    const { code } = await runToEnd(inject('machine').electron!, ['.', ...(asRoot ? ['--no-sandbox'] : []), `--data=${culet.dataDir}`]);
    expect(code).toBe(0);
    await expect.poll(() => culet.electron!.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().map((window) => window.isMinimized()))).toEqual([false]);
  });

  test('that only looks may verify the casebook meanwhile', async () => {
    const { code, said } = await runToEnd(projectNode()!, [builtCommandLine, 'verify', '--data', culet.dataDir]);
    expect(said).toContain('Everything fits.');
    expect(code).toBe(0);
  });
});

describe.each(availableHosts())('closing %s', (host) => {
  const dataDir = mkdtempSync(join(tmpdir(), 'culet-closing-'));
  afterAll(() => { rmSync(dataDir, { recursive: true, force: true }); });

  test('folds the casebook into one file and lets go of it', async () => {
    const culet = await openCulet({ host, dataDir });
    await startCasebook(culet);
    const log = join(dataDir, 'Casebook.culet-wal');
    expect(existsSync(log)).toBe(true);
    await culet.close();
    expect(existsSync(log)).toBe(false);
    expect(culet.log()).not.toContain('did not quit');
  });
});

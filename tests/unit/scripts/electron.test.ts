import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { display, installedElectron, startsAtAll } from '../../../scripts/lib/electron.mjs';

let base = '';
beforeEach(() => { base = mkdtempSync(join(tmpdir(), 'culet-electron-')); });
afterEach(() => { vi.unstubAllEnvs(); rmSync(base, { recursive: true, force: true }); });

test('a folder without Electron is named', () => {
  vi.stubEnv('ELECTRON_OVERRIDE_DIST_PATH', base);
  expect(installedElectron()).toEqual({ ok: false, reason: `ELECTRON_OVERRIDE_DIST_PATH names ${base}, where no Electron is` });
});

describe.runIf(process.platform === 'linux')('on Linux', () => {
  const noWayland = () => { vi.stubEnv('WAYLAND_DISPLAY', ''); };

  test('Electron is found where the variable points', () => {
    writeFileSync(join(base, 'electron'), '');
    vi.stubEnv('ELECTRON_OVERRIDE_DIST_PATH', base);
    expect(installedElectron()).toEqual({ ok: true, value: join(base, 'electron') });
  });

  test('a program that lacks a library is not used, and its own words say why', () => {
    const program = join(base, 'electron');
    writeFileSync(program, '#!/bin/sh\necho "libnss3.so: cannot open shared object file" >&2\nexit 127\n');
    chmodSync(program, 0o755);
    expect(startsAtAll(program)).toEqual({ ok: false, reason: 'Electron does not start here (libnss3.so: cannot open shared object file)' });
  });

  test.each([
    ['none is set', '', 'there is no display'],
    ['it has no number', 'elsewhere', 'the display elsewhere is not one'],
    ['its server is gone', ':7391', 'the display :7391 does not answer'],
  ])('there is no display when %s', async (_case, value, reason) => {
    noWayland();
    vi.stubEnv('DISPLAY', value);
    expect(await display()).toEqual({ ok: false, reason });
  });

  test('a display that answers is one', async () => {
    noWayland();
    const number = 20_000 + (process.pid % 10_000);
    const server = createServer();
    await new Promise<void>((resolve) => server.listen(`\0/tmp/.X11-unix/X${number}`, resolve));
    vi.stubEnv('DISPLAY', `:${number}.0`);
    expect(await display()).toEqual({ ok: true, value: `:${number}.0` });
    server.close();
  });
});

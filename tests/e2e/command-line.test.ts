import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WIRE_TYPE } from '../../app/contract/wire.ts';
import { builtCommandLine, projectNode, toolEnvironment } from '../../scripts/lib/paths.mjs';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'culet-command-line-'));
  writeFileSync(join(folder, 'a.csv'), 'Wavelength (nm),Absorbance\n400,0.1\n410,0.2\n420,0.15\n');
});
afterAll(() => { rmSync(folder, { recursive: true, force: true }); });

const start = (args: readonly string[]): ChildProcess =>
  spawn(projectNode()!, [builtCommandLine, ...args], { cwd: folder, env: toolEnvironment(), stdio: ['pipe', 'pipe', 'pipe'] });

type Ended = { readonly code: number | null; readonly out: string; readonly err: string };

function ended(child: ChildProcess): Promise<Ended> {
  return new Promise((resolve) => {
    let out = '';
    let err = '';
    child.stdout!.on('data', (bytes: Buffer) => { out += bytes.toString('utf8'); });
    child.stderr!.on('data', (bytes: Buffer) => { err += bytes.toString('utf8'); });
    child.once('close', (code) => { resolve({ code, out, err }); });
  });
}

/** Waits for the first line on standard output. */
function firstLine(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let out = '';
    child.stdout!.on('data', (bytes: Buffer) => { out += bytes.toString('utf8'); if (out.includes('\n')) resolve(out.split('\n')[0]!); });
    child.once('close', (code) => { reject(new Error(`ended with ${code}`)); });
  });
}

/** The status of a request with just these headers. */
function status(address: URL, path: string, headers: Record<string, string>, method = 'GET'): Promise<number> {
  return new Promise((resolve, reject) => {
    const asked = request({ agent: false, host: '127.0.0.1', port: address.port, path, method, headers: { host: address.host, ...headers } }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    });
    asked.on('error', reject);
    asked.end();
  });
}

describe('the built command line', () => {
  test('prints JSON alone on standard output', async () => {
    const { code, out, err } = await ended(start(['read', 'a.csv', '--json']));
    expect(code).toBe(0);
    expect(err).toBe('');
    expect(JSON.parse(out)).toMatchObject([{ file: 'a.csv', ok: true, blocks: [{ xUnit: 'nm', yUnit: 'absorbance', points: 3, firstX: 400, lastX: 420, minY: 0.1, maxY: 0.2 }] }]);
  });

  test('reads what is piped into it', async () => {
    const child = start(['read', '-', '--json']);
    const end = ended(child);
    child.stdin!.end('Wavelength (nm),Absorbance\n400,0.1\n410,0.2\n420,0.15\n');
    expect(JSON.parse((await end).out)).toMatchObject([{ file: '-', ok: true }]);
  });

  test('its exit code tells how it went', async () => {
    expect((await ended(start(['read', 'missing.csv']))).code).toBe(1);
    expect((await ended(start(['read', '--nonsense']))).code).toBe(2);
    expect((await ended(start(['verify', 'missing.culet']))).code).toBe(1);
    expect(await ended(start(['--version']))).toEqual({ code: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) as string, err: '' });
  });
});

describe('serve', () => {
  test('prints one line, says on standard error why it is used, guards the address and ends when asked', async () => {
    const child = start(['serve', '--data', join(folder, 'data'), '--port', '0', '--note', 'No display here.']);
    const end = ended(child);
    const line = await firstLine(child);
    expect(line).toMatch(/^Culet is open at http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]{40,}$/);
    const address = new URL(line.slice('Culet is open at '.length));
    const token = `/${address.search}`;
    expect(await status(address, token, { host: 'evil.example' })).toBe(421);
    expect(await status(address, token, { origin: 'http://evil.example' })).toBe(403);
    expect(await status(address, '/', {})).toBe(401);
    expect(await status(address, '/call/casebook.status', { origin: address.origin, 'content-type': WIRE_TYPE }, 'POST')).toBe(401);
    expect(await status(address, token, {})).toBe(303);
    expect(await status(address, token, {})).toBe(401);
    child.kill('SIGTERM');
    expect(await end).toEqual({ code: 0, out: `${line}\n`, err: 'No display here.\n' });
  });

  test('a port that is taken is said in a sentence', async () => {
    const child = start(['serve', '--data', join(folder, 'one')]);
    const end = ended(child);
    const { port } = new URL((await firstLine(child)).slice('Culet is open at '.length));
    const second = await ended(start(['serve', '--data', join(folder, 'two'), '--port', port]));
    expect(second).toEqual({ code: 1, out: '', err: `Port ${port} is used by another program. Choose another with --port, or leave it out for any free one.\n` });
    child.kill('SIGINT');
    expect((await end).code).toBe(0);
  });
});

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readAsset, resolveAsset } from '../../../../main/host/read-asset.ts';

let top = '';
let root = '';
beforeAll(() => {
  top = mkdtempSync(path.join(tmpdir(), 'culet-asset-'));
  root = path.join(top, 'page');
  mkdirSync(path.join(root, 'assets'), { recursive: true });
  writeFileSync(path.join(root, 'index.html'), '<p>page</p>');
  writeFileSync(path.join(root, 'assets', 'a b.js'), '1');
  writeFileSync(path.join(root, 'notes.culet'), 'casebook');
  writeFileSync(path.join(top, 'secret.txt'), 'secret');
});
afterAll(() => { rmSync(top, { recursive: true, force: true }); });

test.each([
  '/../secret.txt', '/..%2fsecret.txt', '/%2e%2e/secret.txt', '/assets/../../secret.txt', '/..\\secret.txt', '/%5c..%5csecret.txt',
  '//etc/passwd', '/%00', '/%zz', 'secret.txt', '', '/.', '/page/../..',
])('refuses %j', async (pathname) => {
  expect(await readAsset(root, pathname)).toBeNull();
});

test('a folder of a similar name is outside', () => {
  expect(resolveAsset(root, '/../page-two/index.html')).toBeNull();
});

test('gives the page for / and decodes names', async () => {
  expect((await readAsset(root, '/'))?.body.toString()).toBe('<p>page</p>');
  expect(await readAsset(root, '/assets/a%20b.js')).toMatchObject({ mediaType: 'text/javascript; charset=utf-8' });
});

test('gives no file of a kind that a page never needs, and no folder', async () => {
  expect(await readAsset(root, '/notes.culet')).toBeNull();
  expect(await readAsset(root, '/assets')).toBeNull();
  expect(await readAsset(root, '/missing.js')).toBeNull();
});

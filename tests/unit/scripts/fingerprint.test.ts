import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { fingerprint } from '../../../scripts/lib/fingerprint.mjs';

let base = '';
const time = new Date('2026-01-02T03:04:05Z');

function put(name: string, text: string, at = time): void {
  writeFileSync(join(base, name), text);
  utimesSync(join(base, name), at, at);
}

beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'culet-fingerprint-'));
  mkdirSync(join(base, 'app/deep'), { recursive: true });
  put('app/one.ts', '1');
  put('app/deep/two.ts', '2');
});
afterEach(() => rmSync(base, { recursive: true, force: true }));

test('stays the same while nothing changes', () => {
  expect(fingerprint(base, ['app', 'not-there'])).toBe(fingerprint(base, ['app', 'not-there']));
});

test.each([
  ['a file is added', () => put('app/deep/three.ts', '3')],
  ['a file is removed', () => rmSync(join(base, 'app/deep/two.ts'))],
  ['a file grows', () => put('app/one.ts', '11')],
  ['a file is written again with as many characters', () => put('app/one.ts', '9', new Date('2026-01-02T03:04:06Z'))],
])('changes when %s', (_case, change) => {
  const before = fingerprint(base, ['app']);
  change();
  expect(fingerprint(base, ['app'])).not.toBe(before);
});

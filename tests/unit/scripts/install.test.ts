import { describe, expect, test } from 'vitest';
import { lockFits, whyStale } from '../../../scripts/lib/install.mjs';

const wanted = {
  '': { dependencies: { zod: '4.6.7' }, devDependencies: { vite: '8.3.8' } },
  'node_modules/zod': { version: '4.6.7', integrity: 'sha512-a' },
  'node_modules/vite': { version: '8.3.8', integrity: 'sha512-b' },
  'node_modules/vite/node_modules/fsevents': { version: '2.3.3', integrity: 'sha512-c', optional: true },
};
const installed = { 'node_modules/zod': wanted['node_modules/zod'], 'node_modules/vite': wanted['node_modules/vite'] };

describe('whyStale', () => {
  test('is silent after an install by hand on a system that leaves optional packages out', () => {
    expect(whyStale(wanted, installed)).toBeNull();
  });
  test.each([
    ['nothing was ever installed', null, 'nothing is installed yet'],
    ['a package is missing', { 'node_modules/zod': wanted['node_modules/zod'] }, 'vite is missing'],
    ['a version differs', { ...installed, 'node_modules/zod': { version: '4.6.6', integrity: 'sha512-a' } }, 'zod has another version'],
    ['the same version has other contents', { ...installed, 'node_modules/zod': { version: '4.6.7', integrity: 'sha512-x' } }, 'zod has another version'],
  ])('says why when %s', (_case, have, reason) => {
    expect(whyStale(wanted, have)).toBe(reason);
  });
});

test('a package more than wanted is no reason to install anew', () => {
  expect(whyStale(wanted, { ...installed, 'node_modules/@old/one': { version: '1.0.0' } })).toBeNull();
});

describe('lockFits', () => {
  test('takes the lists in any order', () => {
    expect(lockFits({ devDependencies: { vite: '8.3.8' }, dependencies: { zod: '4.6.7' } }, wanted)).toBe(true);
  });
  test('takes a lock file that knows more, as npm ci does', () => {
    expect(lockFits({ dependencies: { zod: '4.6.7' } }, wanted)).toBe(true);
  });
  test.each([
    ['another version', { dependencies: { zod: '4.6.8' }, devDependencies: { vite: '8.3.8' } }],
    ['one more package', { dependencies: { zod: '4.6.7', uuid: '14.0.3' }, devDependencies: { vite: '8.3.8' } }],
  ])('refuses %s', (_case, manifest) => {
    expect(lockFits(manifest, wanted)).toBe(false);
  });
});

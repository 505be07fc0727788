import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/lib/paths.mjs';

const settings = readFileSync(inRoot('electron-builder.yml'), 'utf8');

/** The entries of a list in electron-builder.yml, without quotes. */
function list(name: string): string[] {
  const block = new RegExp(`^${name}:\\n((?:  - .*\\n)+)`, 'm').exec(settings)?.[1] ?? '';
  return block.split('\n').filter((line) => line !== '').map((line) => line.replace(/^\s*- /, '').replace(/^"|"$/g, ''));
}

const wanted = list('files').filter((entry) => !entry.startsWith('!'));

describe('the packaged program', () => {
  test.each(wanted)('takes %s, which is there after a build', (entry) => {
    expect(existsSync(inRoot(entry.replace(/\/\*\*.*$/, '')))).toBe(true);
  });

  test('lists every folder that the build writes', () => {
    for (const folder of ['dist/main/**', 'dist/renderer/**', 'dist/assets/**']) expect(wanted).toContain(folder);
  });

  test('lists every package that the bundles load at run time', () => {
    // A bundle loads chunks, and these others: all of them are read.
    const files = ['main', 'culet', 'worker', 'verify-worker', 'preload'].map((name) => `${name}.cjs`);
    const code = new Map<string, string>();
    for (let name = files.pop(); name !== undefined; name = files.pop()) {
      if (code.has(name)) continue;
      const text = readFileSync(inRoot('dist', 'main', name), 'utf8');
      code.set(name, text);
      files.push(...[...text.matchAll(/require\(["']\.\/([^"']+)["']\)/g)].map((match) => match[1]!));
    }
    const packages = [...code.values()].flatMap((text) => [...text.matchAll(/^.*\brequire\(["']((?:@[\w.-]+\/)?[\w-]+)["']\)/gm)].map((match) => match[1]!));
    const installed = [...new Set(packages)].filter((name) => name !== 'electron' && existsSync(inRoot('node_modules', name)));
    expect(installed).toContain('better-sqlite3');
    // Loaded by name at run time, so the bundles do not show them; the natives are left out, which is what the decoder's loader expects.
    for (const name of ['sharp', 'sharp/node_modules/semver', '@img/sharp-wasm32', '@img/colour', 'detect-libc', 'tslib']) installed.push(name);
    expect(wanted.some((entry) => entry.includes('sharp-linux') || entry.includes('@img/**'))).toBe(false);
    for (const name of installed) expect(wanted.some((entry) => entry.startsWith(`node_modules/${name}/`)), name).toBe(true);
  });

  test('carries the migrations, the printed fonts and the colour profile beside the program', () => {
    const journal = JSON.parse(readFileSync(inRoot('dist/main/migrations/meta/_journal.json'), 'utf8')) as { entries: { tag: string }[] };
    expect(journal.entries.length).toBeGreaterThan(0);
    for (const { tag } of journal.entries) expect(existsSync(inRoot('dist/main/migrations', `${tag}.sql`)), tag).toBe(true);
    expect(existsSync(inRoot('dist/assets/fonts/ibm-plex-sans-latin-400-normal.woff'))).toBe(true);
    expect(existsSync(join(inRoot('dist/main/data'), 'sRGB_IEC61966_2_1.icc'))).toBe(true);
  });

  test('keeps native libraries outside the archive and rebuilds nothing', () => {
    expect(list('asarUnpack')).toContain('**/*.node');
    expect(settings).toMatch(/^npmRebuild: false$/m);
  });

  // Electron's guides on security and on fuses.
  test.each([
    ['runAsNode', false], ['enableNodeOptionsEnvironmentVariable', false], ['enableNodeCliInspectArguments', false],
    ['onlyLoadAppFromAsar', true], ['enableEmbeddedAsarIntegrityValidation', true], ['enableCookieEncryption', true],
    ['grantFileProtocolExtraPrivileges', false],
  ])('sets the fuse %s to %s', (name, value) => {
    expect(settings).toMatch(new RegExp(`^  ${name}: ${value}$`, 'm'));
  });
});

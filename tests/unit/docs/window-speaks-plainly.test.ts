import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
/** What the window shows comes from these rooms; the command line adds its own words in main/cli. */
const ROOMS = ['app', 'db', 'renderer', 'main/bundle', 'main/casebook', 'main/checkpoints', 'main/keys', 'main/people', 'main/services', 'main/signature', 'main/print', 'main/workers'];
/** Goes into every bundle, for whoever opens it anywhere. */
const NOT_SHOWN = ['app/bundle/bundle-readme.ts'];
const SPEAKS_OF_IT = /command line|[\s“(]--[a-z][a-z-]+|\bculet (verify|bundle|import|serve|read|analyse|report|figures)\b/;

const sources = ROOMS.flatMap((room) => readdirSync(path.join(ROOT, room), { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name)).map((name) => path.posix.join(room, name.replaceAll(path.sep, '/'))));

/** Text as it may be shown: without comments and imports. */
const spoken = (source: string): string => source.replace(/\/\*[^]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '').replace(/^import .*$/gm, '');

test('nothing that the window may say speaks of commands and their options', () => {
  expect(sources.length).toBeGreaterThan(500);
  const texts = (file: string) => spoken(readFileSync(path.join(ROOT, file), 'utf8')).match(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`|>[^<>{}]+</g) ?? [];
  const found = sources.filter((file) => !NOT_SHOWN.includes(file)).flatMap((file) => texts(file).map((text) => text.slice(1, -1)).filter((text) => SPEAKS_OF_IT.test(text)).map((text) => `${file}: ${text.slice(0, 80)}`));
  expect(found).toEqual([]);
});

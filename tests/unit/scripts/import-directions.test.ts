import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { inRoot } from '../../../scripts/lib/paths.mjs';

/** A small house with one fault of each kind, and beside each fault a neighbour that is allowed. */
const HOUSE: Readonly<Record<string, string>> = {
  'app/reads-disk.ts': "import { readFileSync } from 'node:fs'; export const x = readFileSync;",
  'app/knows-store.ts': "import type { Row } from '../db/row.ts'; export type R = Row;",
  'app/knows-electron.ts': "import electron from 'electron'; export const x = electron;",
  'app/schema.ts': "import { z } from 'zod'; export const x = z;",
  'db/row.ts': "import Database from 'better-sqlite3'; import { x } from '../app/schema.ts'; export type Row = { x: typeof x; d: typeof Database };",
  'db/knows-main.ts': "import '../main/service.ts';",
  'main/service.ts': "import { app } from 'electron'; import '../db/row.ts'; export const x = app;",
  'main/knows-window.ts': "import '../renderer/page.ts';",
  'renderer/page.ts': "import { createElement } from 'react'; import { x } from '../app/schema.ts'; export const p = [createElement, x];",
  'renderer/knows-main.ts': "import '../main/service.ts';",
  'renderer/knows-sql.ts': "import Database from 'better-sqlite3'; export const x = Database;",
  'renderer/reads-disk.ts': "import { readFileSync } from 'node:fs'; export const x = readFileSync;",
  'main/round-a.ts': "import { b } from './round-b.ts'; export const a = (): unknown => b;",
  'main/round-b.ts': "import { a } from './round-a.ts'; export const b = (): unknown => a;",
};

let base = '';
beforeAll(() => {
  base = mkdtempSync(join(tmpdir(), 'culet-house-'));
  for (const [name, text] of Object.entries(HOUSE)) {
    mkdirSync(dirname(join(base, name)), { recursive: true });
    writeFileSync(join(base, name), text);
  }
  for (const name of ['.dependency-cruiser.cjs', 'tsconfig.base.json', 'package.json']) cpSync(inRoot(name), join(base, name));
  symlinkSync(inRoot('node_modules'), join(base, 'node_modules'), 'junction');
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

test('the import rules of this repository catch each fault and nothing else', () => {
  const tool = inRoot('node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs');
  const run = spawnSync(process.execPath, [tool, '--config', '.dependency-cruiser.cjs', '--output-type', 'json', '--preserve-symlinks', 'app', 'db', 'main', 'renderer'], { cwd: base, encoding: 'utf8' });
  const found = (JSON.parse(run.stdout) as { summary: { violations: { from: string; rule: { name: string } }[] } }).summary.violations;
  // A circle is reported once, at the first of its files.
  expect([...new Set(found.map((one) => `${one.from}: ${one.rule.name}`))].sort()).toEqual([
    'app/knows-electron.ts: app-stands-alone',
    'app/knows-store.ts: app-stands-alone',
    'app/reads-disk.ts: app-stands-alone',
    'db/knows-main.ts: db-knows-only-app',
    'main/knows-window.ts: main-not-renderer',
    'main/round-a.ts: no-cycles',
    'renderer/knows-main.ts: renderer-only-app',
    'renderer/knows-sql.ts: renderer-only-app',
    'renderer/reads-disk.ts: renderer-only-app',
  ]);
});

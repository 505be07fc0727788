import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { SOURCE_ROWS } from './source-rows.ts';

const page = readFileSync(new URL('../../../docs/sources.md', import.meta.url), 'utf8').split('\n');

test.each(Object.keys(SOURCE_ROWS))('docs/sources.md holds every entry of the table “%s”, and no other', (heading) => {
  const start = page.findIndex((line) => line === `## ${heading}`);
  expect(start).toBeGreaterThan(0);
  const rest = page.slice(start + 1);
  const end = rest.findIndex((line) => line.startsWith('## '));
  const rows = rest.slice(0, end < 0 ? undefined : end).filter((line) => line.startsWith('| `'));
  expect(rows).toEqual(SOURCE_ROWS[heading]);
});

import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CONCLUSION_IDS } from '../../../app/domain/conclusion.ts';
import { ROLE_WORDS } from '../../../app/domain/role.ts';
import { loadScenario } from '../../../main/demonstration/load-scenario.ts';

const ROOT = new URL('../../../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, ROOT), 'utf8');
const PAGES = ['README.md', 'DEVELOPERS.md', ...readdirSync(new URL('docs/', ROOT)).filter((name) => name.endsWith('.md')).map((name) => `docs/${name}`)];

describe('the pages', () => {
  test.each(PAGES)('%s points only to what is there', (page) => {
    const folder = new URL(page, ROOT);
    for (const [, target] of read(page).matchAll(/\]\(([^)#\s]+)\)/g)) {
      if (/^https?:/.test(target!)) continue;
      expect([target, existsSync(new URL(target!, folder))]).toEqual([target, true]);
    }
  });

  test.each(['README.md', 'DEVELOPERS.md', 'docs/architecture.md', 'docs/sources.md', 'docs/data-model.md'])('%s names only files and folders that are there', (page) => {
    for (const [, path] of read(page).matchAll(/`((?:app|db|main|renderer|tests|docs|assets)\/[\w./-]*)`/g)) {
      expect([path, existsSync(new URL(path!, ROOT))]).toEqual([path, true]);
    }
  });

  test('the data model names every table of the schema', () => {
    const tables = readdirSync(new URL('db/migrations/', ROOT)).filter((name) => name.endsWith('.sql')).flatMap((name) => [...read(`db/migrations/${name}`).matchAll(/CREATE TABLE `(\w+)`/g)].map((match) => match[1]!));
    const page = read('docs/data-model.md');
    expect(tables.length).toBeGreaterThan(15);
    expect(tables.filter((table) => !page.includes(`\`${table}\``))).toEqual([]);
  });

  test('the user guide names every role and has a mark for every conclusion', () => {
    const page = read('docs/user-guide.md');
    for (const words of Object.values(ROLE_WORDS)) expect(page).toContain(`| ${words} |`);
    const marks = page.slice(page.indexOf('### Marks')).split('\n').filter((line) => /^\| .*(rhombus|circle)/.test(line));
    expect(marks).toHaveLength(CONCLUSION_IDS.length);
  });

  test('the walk through the demonstration names its cases and people, and counts them right', () => {
    const page = read('README.md');
    const { cases, clients, people } = loadScenario();
    const stones = cases.flatMap((one) => one.parcels.flatMap((parcel) => parcel.items.flatMap((item) => item.stones)));
    expect(cases).toHaveLength(7);
    expect(page).toContain(`seven cases and ${stones.length} stones`);
    const named = [...page.matchAll(/(?<!\*)\*([A-Z][a-z]+ (?:& )?[A-Z][a-z]+)\*/g)].map((match) => match[1]);
    expect(named.length).toBeGreaterThan(4);
    const known = [...clients, ...people].map((entry) => entry.name);
    expect(named.filter((name) => !known.includes(name!))).toEqual([]);
  });
});

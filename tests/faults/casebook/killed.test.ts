import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openCasebook } from '../../../db/open-casebook.ts';
import { madeCasebook } from '../../unit/db/made-casebook.ts';
import { runUntilKilled } from './run-until-killed.ts';
import { seeded } from './seeded.ts';

const LOOP = join(import.meta.dirname, 'take-in-loop.ts');

/** Kills the loop some milliseconds after its first case; returns the numbers it vouched for. */
const takeInUntilKilled = async (file: string, afterMs: number): Promise<string[]> => (await runUntilKilled({ args: [LOOP, file], afterMs })).filter((line) => /^C-\d{4}-\d{4,}$/.test(line));

test('killed in the middle of taking in, again and again: nothing vouched for is lost, nothing is half there', async () => {
  const { casebook, file, options } = await madeCasebook();
  casebook.close();
  const random = seeded(20260302);
  const vouched: string[] = [];
  for (let round = 0; round < 6; round++) {
    vouched.push(...await takeInUntilKilled(file, Math.floor(random() * 60)));
    const opened = openCasebook(options);
    if (!opened.ok) throw new Error(opened.error.message);
    expect(opened.value.guardsRestored).toEqual([]);
    const verified = await opened.value.ledgers.verify({ at: options.now().toISOString() });
    expect(verified!.parts.filter((part) => !part.sound)).toEqual([]);
    const numbers = (await opened.value.cases.list({ text: '', state: 'all', limit: 100_000, offset: 0 })).rows.map((row) => row.number).sort();
    expect(new Set(numbers).size).toBe(numbers.length);
    for (const number of vouched) expect(numbers).toContain(number);
    const running = numbers.map((number) => Number(number.slice(7)));
    expect(running).toEqual(running.map((_n, i) => i + 1));
    // Every case is whole: two items, four stones, four entries of custody.
    expect(opened.value.handle.read.get(`SELECT count(*) AS cases, (SELECT count(*) FROM item) AS items, (SELECT count(*) FROM stone) AS stones, (SELECT count(*) FROM custody_entry) AS entries FROM case_record`))
      .toEqual({ cases: numbers.length, items: 2 * numbers.length, stones: 4 * numbers.length, entries: 4 * numbers.length });
    opened.value.close();
  }
  expect(vouched.length).toBeGreaterThan(6);
}, 120_000);

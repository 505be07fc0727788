import { copyFileSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { openCasebook, type OpenOptions } from '../../../db/open-casebook.ts';
import { intake, madeCasebook, temporaryFolder } from '../../unit/db/made-casebook.ts';
import { seeded } from './seeded.ts';

const FAILURES = ['damaged', 'not-a-casebook', 'history', 'newer', 'missing', 'migration-failed'];

let sound: string;
let options: OpenOptions;

beforeAll(async () => {
  const made = await madeCasebook();
  for (let i = 0; i < 30; i++) await made.casebook.cases.takeIn({ at: made.deps.now().toISOString(), personId: made.personId, operation: 'cases.takeIn' }, intake());
  made.casebook.close();
  sound = made.file;
  options = made.options;
});

function copy(): string {
  const file = join(temporaryFolder(), 'Casebook.culet');
  copyFileSync(sound, file);
  return file;
}

/** Opens and verifies; returns how the damage was met: a typed failure, a fault named by verify, or no trace of it. */
async function met(file: string): Promise<string> {
  const opened = openCasebook({ ...options, file });
  if (!opened.ok) {
    expect(FAILURES).toContain(opened.error.code);
    expect(opened.error.message.length).toBeGreaterThan(20);
    expect(opened.error.next.length).toBeGreaterThan(20);
    return 'refused';
  }
  const verified = await opened.value.ledgers.verify({ at: 'now' });
  opened.value.close();
  return verified!.sound ? 'sound' : 'named';
}

describe('a damaged file', () => {
  test('one byte changed anywhere never ends in a crash', async () => {
    const random = seeded(7);
    const outcomes = new Map<string, number>();
    for (let round = 0; round < 120; round++) {
      const file = copy();
      const bytes = readFileSync(file);
      const at = Math.floor(random() * bytes.length);
      bytes[at]! ^= 1 << Math.floor(random() * 8);
      writeFileSync(file, bytes);
      const outcome = await met(file);
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    }
    // Unused bytes of a page and columns outside the ledgers carry no digest: those flips leave no trace.
    expect(outcomes.get('refused') ?? 0).toBeGreaterThan(0);
    expect(outcomes.get('named') ?? 0).toBeGreaterThan(0);
  });
  test.each([0, 1, 18, 100])('cut to %i bytes', async (length) => {
    const file = copy();
    truncateSync(file, length);
    expect(await met(file)).toBe('refused');
  });
  test('cut in half, and a page overwritten with nothing', async () => {
    const half = copy();
    truncateSync(half, 4096 * 20);
    expect(await met(half)).toBe('refused');
    const blank = copy();
    const bytes = readFileSync(blank);
    bytes.fill(0, 4096 * 10, 4096 * 14);
    writeFileSync(blank, bytes);
    expect(['refused', 'named']).toContain(await met(blank));
  });
  test('a disk that is full undoes the whole hand-over and says so at the next attempt as well', async () => {
    const made = await madeCasebook();
    const change = { at: made.deps.now().toISOString(), personId: made.personId, operation: 'cases.takeIn' };
    const { page_count: pages } = made.casebook.handle.read.get<{ page_count: number }>('PRAGMA page_count')!;
    made.casebook.handle.read.get(`PRAGMA max_page_count = ${pages + 1}`);
    const large = Array.from({ length: 40 }, () => intake().parcels[0]!.items[0]!);
    await expect(made.casebook.cases.takeIn(change, intake(large))).rejects.toThrow(/full/);
    made.casebook.handle.read.get('PRAGMA max_page_count = 100000');
    expect(await made.casebook.cases.takeIn(change, intake(large))).toMatchObject({ ok: true, value: { number: 'C-2026-0001' } });
    expect((await made.casebook.ledgers.verify({ at: 'now' }))!.sound).toBe(true);
    made.casebook.close();
  });
});

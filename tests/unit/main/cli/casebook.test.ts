import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import BetterSqlite from 'better-sqlite3';
import type { CliIo } from '../../../../main/cli/io.ts';
import { sayProgress } from '../../../../main/cli/say-progress.ts';
import { concludeAll } from '../services/conclude-all.ts';
import { openHouse, type House } from '../services/work-house.ts';
import { runCaptured } from './run-captured.ts';

/** A house whose case has one issued report, open all the while: what is looked at from outside is in use. */
let house: House;
let folder = '';
let issued: { pdf: Uint8Array; number: string };

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'culet-cli-casebook-'));
  house = await openHouse();
  const { caseId, stones } = await house.takeIn();
  await concludeAll(house, Object.values(stones));
  const row = await house.done(house.colleague, 'reports.issue', { caseId });
  issued = { number: row.number, pdf: (await house.done(house.colleague, 'reports.pdf', { reportId: row.id })).pdf };
  await house.takeIn();
});
afterAll(() => {
  house.close();
  rmSync(folder, { recursive: true, force: true });
});

const culet = (...args: string[]) => runCaptured(args, { workingFolder: folder });
const of = () => ['--casebook', house.casebook.file];
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

describe('report', () => {
  test('writes the issued PDF byte for byte, while the program has the casebook open', async () => {
    const { code, out } = await culet('report', 'c-2026-0001', '--out', 'report.pdf', ...of(), '--json');
    expect(code).toBe(0);
    const written = readFileSync(path.join(folder, 'report.pdf'));
    expect(written.equals(issued.pdf)).toBe(true);
    expect(JSON.parse(out)).toEqual({ ok: true, case: 'C-2026-0001', report: issued.number, revision: 1, draft: false, file: 'report.pdf', bytes: written.byteLength, sha256: sha256(written) });
  });

  test('a case without a report says what to do, and writes nothing', async () => {
    const { code, out, err } = await culet('report', 'C-2026-0002', '--out', 'none.pdf', ...of());
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toBe('No report has been issued for case C-2026-0002.\nIssue it in the window, or add --draft to see what it would say now.\n');
    expect(existsSync(path.join(folder, 'none.pdf'))).toBe(false);
  });

  test('a draft may be had before', async () => {
    expect((await culet('report', 'C-2026-0002', '--out', 'draft.pdf', '--draft', ...of())).code).toBe(0);
    expect(readFileSync(path.join(folder, 'draft.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  test.each([
    [['C-2026-0099', '--out', 'x.pdf'], 'not-found'],
    [['C-2026-0001', '--out', path.join('no', 'such', 'x.pdf')], 'no-folder'],
    [['C-2026-0001', '--out', '.'], 'out-is-folder'],
  ])('%j: says why not', async (args, code) => {
    const answer = await culet('report', ...args, ...of(), '--json');
    expect(answer.code).toBe(1);
    expect(JSON.parse(answer.out)).toMatchObject({ ok: false, error: { code } });
  });

  test('only a whole number of a case is a case', async () => {
    expect((await culet('report', 'C-2026-000', '--out', 'x.pdf', ...of())).code).toBe(1);
  });
});

test('bundle writes a zip', async () => {
  const { code, out } = await culet('bundle', 'C-2026-0001', '--out', 'case.zip', ...of(), '--json');
  expect(code).toBe(0);
  const written = readFileSync(path.join(folder, 'case.zip'));
  expect(JSON.parse(out)).toEqual({ ok: true, case: 'C-2026-0001', file: 'case.zip', bytes: written.byteLength, sha256: sha256(written), files: expect.any(Number) as number, signed: true });
  expect(written.subarray(0, 2).toString()).toBe('PK');
});

describe('the bundle of a period', () => {
  const period = (from: string, to: string, ...more: string[]) => culet('bundle', house.casebook.file, '--from', from, '--to', to, '--out', 'period.zip', ...more, '--json');

  test('holds the cases received on its days, and is verified by itself', async () => {
    const { code, out } = await period('2026-11-25', '2026-11-25');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ ok: true, period: { from: '2026-11-25', to: '2026-11-25' }, cases: ['C-2026-0001', 'C-2026-0002'], signed: true });
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
    const known = await culet('verify', 'period.zip', ...of(), '--json');
    expect(known.code).toBe(0);
    expect(JSON.parse(known.out)).toMatchObject({ ok: true, verdict: 'authentic', faults: [], bundle: { cases: ['C-2026-0001', 'C-2026-0002'], reports: 1 }, sha256: sha256(readFileSync(path.join(folder, 'period.zip'))) });
    const stranger = await culet('verify', 'period.zip', '--data', path.join(folder, 'nobody'));
    expect(stranger.code).toBe(3);
    expect(stranger.out).toContain('nobody here knows whose key signed it');
  });

  test('a byte that was changed makes it altered', async () => {
    await period('2026-11-25', '2026-11-25');
    const bytes = readFileSync(path.join(folder, 'period.zip'));
    bytes[bytes.length >> 1]! ^= 1;
    writeFileSync(path.join(folder, 'altered.zip'), bytes);
    const { code, out } = await culet('verify', 'altered.zip', ...of());
    expect(code).toBe(1);
    expect(out).toContain('was altered or damaged');
  });

  test.each([
    ['2020-01-01', '2020-12-31', 'not-found', 1],
    ['2026-02-30', '2026-12-31', 'invalid-input', 1],
    ['2026-12-31', '2026-01-01', 'invalid-input', 1],
  ])('%s to %s: %s', async (from, to, code, exit) => {
    rmSync(path.join(folder, 'period.zip'), { force: true });
    const answer = await period(from, to);
    expect([answer.code, (JSON.parse(answer.out) as { error: { code: string } }).error.code]).toEqual([exit, code]);
    expect(existsSync(path.join(folder, 'period.zip'))).toBe(false);
  });

  test('half a period is a wrong command, and a zip of somebody else is none', async () => {
    expect((await culet('bundle', house.casebook.file, '--from', '2026-11-25', '--out', 'x.zip')).code).toBe(2);
    writeFileSync(path.join(folder, 'other.zip'), 'PK\u0003\u0004 nothing of ours');
    const { code, out } = await culet('verify', 'other.zip', ...of());
    expect([code, out.includes('This is not a bundle of Culet')]).toEqual([4, true]);
  });
});

describe('verify', () => {
  test('finds a sound casebook sound, while it is in use, and changes nothing', async () => {
    const before = sha256(readFileSync(house.casebook.file));
    const { code, out } = await culet('verify', house.casebook.file, '--json');
    expect(code).toBe(0);
    const verified = JSON.parse(out) as { ok: boolean; casebook: string; parts: { part: string; checked: number; sound: boolean }[] };
    expect(verified).toMatchObject({ ok: true, sound: true, casebook: house.casebook.file });
    expect(verified.parts.find(({ part }) => part === 'issued reports')).toMatchObject({ checked: 1, sound: true });
    expect(sha256(readFileSync(house.casebook.file))).toBe(before);
  });

  test('leaves no copy behind', async () => {
    const copies = () => readdirSync(tmpdir()).filter((name) => name.startsWith('culet-view-'));
    const before = copies();
    await culet('verify', house.casebook.file);
    expect(copies()).toEqual(before);
  });

  test('names the entry that was altered', async () => {
    const altered = path.join(folder, 'altered.culet');
    const backup = await house.casebook.backup(altered);
    expect(backup.ok).toBe(true);
    const sqlite = new BetterSqlite(altered);
    for (const { name } of sqlite.prepare(`SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name = 'custody_entry'`).all() as { name: string }[]) sqlite.exec(`DROP TRIGGER "${name}"`);
    sqlite.exec(`UPDATE custody_entry SET at = '2026-11-25T09:00:00.001Z' WHERE seq = 2`);
    sqlite.close();
    const { code, out } = await culet('verify', altered);
    expect(code).toBe(1);
    expect(out).toMatch(/custody ledger +\d+ +DOES NOT FIT: .*2/);
    expect(out).toContain('Not everything fits');
  });

  test.each([
    ['missing.culet', 'missing'], ['.', 'missing'], ['notes.culet', 'not-a-casebook'], ['torn.culet', 'damaged'],
  ])('%s is not verified but explained', async (name, code) => {
    writeFileSync(path.join(folder, 'notes.culet'), '');
    new BetterSqlite(path.join(folder, 'notes.culet')).exec('CREATE TABLE note (x)').close();
    copyFileSync(path.join(folder, 'report.pdf'), path.join(folder, 'torn.culet'));
    const answer = await culet('verify', name, '--json');
    expect(answer.code).toBe(1);
    expect(JSON.parse(answer.out)).toMatchObject({ ok: false, error: { code, message: expect.any(String) as string, next: expect.any(String) as string } });
  });

  test('without a name it takes the one of the data folder, or says there is none', async () => {
    const data = path.join(folder, 'data');
    const { code, err } = await culet('verify', '--data', data);
    expect(code).toBe(1);
    expect(err).toContain(`There is no casebook in ${data} yet.`);
  });

  test('compares with the head that was noted at closing, of the file itself and not of a copy that is older by nature', async () => {
    const file = path.join(folder, 'Kept.culet');
    expect((await house.casebook.backup(file)).ok).toBe(true);
    const begun = (await house.casebook.laboratory.get())!.createdAt;
    const { audit } = await house.casebook.checkpoints.heads();
    const note = (name: string, head: unknown) => { writeFileSync(path.join(folder, name), JSON.stringify({ open: 'own', ownKnown: true, head })); };
    note('Kept state.json', { begun, at: '2026-11-26T17:00:00.000Z', audit });
    const fits = await culet('verify', 'Kept.culet', '--json');
    expect(fits.code).toBe(0);
    expect(JSON.parse(fits.out)).toMatchObject({ sound: true, remembered: { file: path.join(folder, 'Kept state.json'), at: '2026-11-26T17:00:00.000Z', entry: audit.seq } });
    expect(fits.err).toBe('');

    note('Kept state.json', { begun, at: '2026-11-26T17:00:00.000Z', audit: { seq: audit.seq + 4, hash: 'a'.repeat(64) } });
    const older = await culet('verify', 'Kept.culet');
    expect(older.code).toBe(1);
    expect(older.out).toMatch(/checkpoints +\d+ +DOES NOT FIT: When this casebook was closed here on 2026-11-26T17:00:00.000Z, its audit ledger had \d+ entries/);
    expect(readFileSync(path.join(folder, 'Kept state.json'), 'utf8')).toContain('"ownKnown":true');

    copyFileSync(file, path.join(folder, 'Copy.culet'));
    expect((await culet('verify', 'Copy.culet')).code).toBe(0);
    expect((await culet('verify', 'Copy.culet', '--remembered', 'Kept state.json')).code).toBe(1);
    note('other state.json', { begun: '2020-01-01T00:00:00.000Z', at: '2026-11-26T17:00:00.000Z', audit });
    expect(JSON.parse((await culet('verify', 'Copy.culet', '--remembered', 'other state.json', '--json')).out)).toMatchObject({ ok: false, error: { code: 'other-casebook' } });
    expect(JSON.parse((await culet('verify', 'Copy.culet', '--remembered', 'none.json', '--json')).out)).toMatchObject({ ok: false, error: { code: 'nothing-remembered' } });
  });
});

test('progress is said on a terminal over the same line, and elsewhere only where it is asked for', () => {
  const said = (terminal: boolean, asked: boolean): string => {
    let text = '';
    const { step, end } = sayProgress({ err(more: string) { text += more; }, errIsTerminal: terminal } as CliIo, 'verifying', asked);
    step(500, 1000);
    step(501, 1000);
    end();
    return text;
  };
  expect(said(false, false)).toBe('');
  expect(said(false, true)).toBe('verifying: 50 % of 1,000\n');
  expect(said(true, false)).toBe(`\rverifying: 50 % of 1,000\r${' '.repeat(24)}\r`);
});

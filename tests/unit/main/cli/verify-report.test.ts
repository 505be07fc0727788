import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { reportVerdict } from '../../../../app/signature/report-verdict.ts';
import { writePublicKeyFile } from '../../../../app/signature/public-key-file.ts';
import { publicKeyOf } from '../../../../main/keys/ed25519.ts';
import { createReportCheckService } from '../../../../main/services/report-check.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import { concludeAll } from '../services/conclude-all.ts';
import { laid, madeUploads } from '../uploads/laid-upload.ts';
import { openHouse, type House } from '../services/work-house.ts';
import { runCaptured } from './run-captured.ts';

/** A house that issued a report and its revision; outside it lie the two files, its public key, and the key of another. */
let house: House;
let folder = '';
const inFolder = (name: string): string => path.join(folder, name);
const culet = (...args: string[]) => runCaptured(['verify', ...args], { workingFolder: folder, env: { CULET_DATA: inFolder('nothing-here') } });

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'culet-verify-'));
  house = await openHouse();
  const { caseId, stones } = await house.takeIn();
  await concludeAll(house, Object.values(stones));
  for (const name of ['first.pdf', 'second.pdf']) {
    await house.casebook.cases.amend({ at: house.now(), personId: house.examiner, operation: 'cases.amend' }, { caseId, asks: `asked for ${name}`, dueOn: null, remarks: '' });
    const row = await house.done(house.colleague, 'reports.issue', { caseId, reason: 'The question was asked anew.' });
    writeFileSync(inFolder(name), (await house.done(house.colleague, 'reports.pdf', { reportId: row.id })).pdf);
    house.pass(60);
  }
  writeFileSync(inFolder('draft.pdf'), (await house.done(house.colleague, 'reports.preview', { caseId })).pdf);
  const own = (await house.casebook.keys.current())!;
  const key = (publicKey: Uint8Array) => writePublicKeyFile({ laboratory: 'Invented Laboratory', publicKey, madeAt: own.createdAt, invented: false });
  writeFileSync(inFolder('key.pem'), key(Buffer.from(own.publicKey, 'hex')));
  writeFileSync(inFolder('other.pem'), key(publicKeyOf(new Uint8Array(32).fill(1))));
  const altered = readFileSync(inFolder('second.pdf'));
  altered[altered.length - 3000]! ^= 4;
  writeFileSync(inFolder('altered.pdf'), altered);
}, 60_000);
afterAll(() => {
  house.close();
  rmSync(folder, { recursive: true, force: true });
});

test('with the laboratory’s key a stranger is told that the report is authentic', async () => {
  const { code, out, err } = await culet('second.pdf', '--key', 'key.pem');
  expect([code, err]).toEqual([0, '']);
  expect(out).toContain('This is report S-2026-0001, revision 2, every byte as it was issued, signed by Invented Laboratory.');
  expect(out).toMatch(/Fingerprint of the key: ([0-9a-f]{4} ){15}[0-9a-f]{4}\./);
});

test('without a key, or with another’s, the bytes are sound and the key unknown', async () => {
  for (const args of [['second.pdf'], ['second.pdf', '--key', 'other.pem']]) {
    const { code, out } = await culet(...args, '--json');
    expect(code).toBe(3);
    expect(JSON.parse(out)).toMatchObject({ ok: false, verdict: 'unknown-key', report: { number: 'S-2026-0001', revision: 2 }, key: { whose: null } });
  }
});

test('the casebook that issued it knows its own key, and which revision replaced it', async () => {
  const first = await culet('first.pdf', '--casebook', house.casebook.file, '--json');
  expect([first.code, JSON.parse(first.out)]).toMatchObject([0, { ok: true, verdict: 'authentic', standing: { state: 'superseded' } }]);
  expect(JSON.parse(first.out).standing.sentence).toContain('revision 2');
  const second = await culet('second.pdf', '--casebook', house.casebook.file);
  expect([second.code, second.out.includes('newest revision that this casebook holds')]).toEqual([0, true]);
});

test('an altered report fails whatever key is named, and says what was altered', async () => {
  for (const args of [[], ['--key', 'key.pem']]) {
    const { code, out } = await culet('altered.pdf', ...args);
    expect(code).toBe(1);
    expect(out).toContain('This file is not report S-2026-0001, revision 2 as it was issued: it was altered.\n  The pages, or what holds the file together, are not as they were signed.');
  }
});

test('what carries no signature has an exit code of its own', async () => {
  expect(await culet('draft.pdf')).toMatchObject({ code: 4 });
  writeFileSync(inFolder('letter.pdf'), '%PDF-1.7\nnothing of ours');
  expect((await culet('letter.pdf')).out).toContain('This is not a report of Culet');
});

test('what can’t be tried is said', async () => {
  expect(await culet('missing.pdf')).toMatchObject({ code: 1, out: '', err: expect.stringContaining('“missing.pdf” is not there.') });
  writeFileSync(inFolder('bad.pem'), 'no key');
  expect((await culet('second.pdf', '--key', 'bad.pem')).err).toContain('This file holds no public key');
  expect(await culet('second.pdf', '--casebook', 'missing.culet')).toMatchObject({ code: 1 });
});

test('a report is known by its first bytes, whatever its name; a casebook is still a casebook', async () => {
  writeFileSync(inFolder('renamed.bin'), readFileSync(inFolder('second.pdf')));
  expect((await culet('renamed.bin', '--key', 'key.pem')).code).toBe(0);
  expect((await culet(house.casebook.file)).out).toContain('custody ledger');
});

test('the window’s question is answered in the same words, with a casebook and without', async () => {
  const ask = async (casebook: House['casebook'] | null, bytes: Uint8Array) => {
    const { uploads } = madeUploads();
    const session = { personId: null };
    const service = createReportCheckService({ casebook: () => casebook, pool: createInlinePool(), uploads });
    const answer = await service({ upload: await laid(uploads, session, 'report.pdf', bytes) }, { session, signal: new AbortController().signal, emit() {} });
    return answer.ok ? reportVerdict.parse(answer.value) : null;
  };
  const bytes = readFileSync(inFolder('second.pdf'));
  expect(await ask(house.casebook, bytes)).toMatchObject({ verdict: 'authentic', standing: { state: 'in-force' }, bytes: bytes.byteLength });
  expect(await ask(null, bytes)).toMatchObject({ verdict: 'unknown-key', standing: null });
});

import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { METHOD_IDS } from '../../app/domain/method.ts';
import { readPdf } from '../unit/main/print/read-pdf.ts';
import { availableHosts } from './harness/hosts.ts';
import type { OpenCulet } from './harness/launch.ts';
import { callDoor } from './steps/call-door.ts';
import { keptData, workAs } from './steps/kept-data.ts';
import { lookAt, visit } from './steps/look-at.ts';
import { fileSavedBy } from './steps/save-file.ts';

/** Some hundred pictures, spectra and entries are made; a slow machine takes its time. */
const BUILD_MS = 90_000;
const VERIFY_MS = 30_000;
const MANAGER = 'Maren Holtby';

/** Built in the first host and opened in the others: both keep it in the same file. */
const built = join(mkdtempSync(join(tmpdir(), 'culet-demonstration-')), 'Demonstration.culet');
afterAll(() => { rmSync(dirname(built), { recursive: true, force: true }); });

describe.each(availableHosts())('the demonstration in %s', (host) => {
  const data = keptData(host);
  let culet: OpenCulet;
  afterAll(() => data.remove());
  const file = join(data.dataDir, 'Demonstration.culet');

  test('is built when asked for, and says how far it has come', async () => {
    const again = existsSync(built);
    if (again) copyFileSync(built, file);
    culet = await data.open();
    await culet.page.getByRole('button', { name: 'Open the demonstration' }).click();
    if (!again) {
      await culet.page.getByText(/, \d+ of \d+$/).waitFor();
      expect(existsSync(file)).toBe(false);
    }
    await culet.page.getByRole('dialog', { name: 'Who works at this window?' }).waitFor({ timeout: BUILD_MS });
    expect(existsSync(file)).toBe(true);
    await workAs(culet, MANAGER);
    await culet.page.getByText('invented data').waitFor();
  });

  test('holds cases, stones and every method enough to look round in', async () => {
    const cases = await callDoor(culet, 'cases.list', {});
    const stones = await callDoor(culet, 'stones.list', { limit: 1000 });
    expect(cases.total).toBeGreaterThanOrEqual(6);
    expect(stones.total).toBeGreaterThanOrEqual(40);
    expect(new Set(cases.rows.map((row) => row.state))).toEqual(new Set(['open', 'reported', 'returned']));
    const used = new Set<string>();
    for (const stone of stones.rows.filter((one) => one.runs > 0)) {
      const { runs } = await callDoor(culet, 'stones.folder', { stoneId: stone.id });
      for (const run of runs) used.add(run.method);
    }
    expect(METHOD_IDS.filter((method) => !used.has(method))).toEqual([]);
  });

  test('is looked at, list by list', async () => {
    for (const list of ['Bench', 'Cases', 'Stones', 'Reports', 'Instruments', 'Ledgers', 'House']) {
      await visit(culet, `#/${list.toLowerCase()}`, list);
      await lookAt(culet, list.toLowerCase());
    }
    const { rows } = await callDoor(culet, 'cases.list', { state: 'reported' });
    await visit(culet, `#/case/${rows[0]!.id}`, rows[0]!.clientName);
    await lookAt(culet, 'case-reported');
  });

  test('its ledgers are unbroken', async () => {
    await visit(culet, '#/ledgers', 'Ledgers');
    await culet.page.keyboard.press('v');
    await culet.page.getByRole('heading', { name: 'Unbroken' }).waitFor({ timeout: VERIFY_MS });
    await lookAt(culet, 'ledgers-verified');
    await culet.page.getByRole('radio', { name: 'audit' }).click();
    await culet.page.getByRole('table', { name: 'Audit ledger' }).waitFor();
    await lookAt(culet, 'ledgers-audit', ['light']);
  });

  test('its reports are marked as invented and print the same twice', async () => {
    await visit(culet, '#/reports', 'Reports');
    const save = () => fileSavedBy(culet, () => culet.page.getByRole('button', { name: 'Save PDF' }).first().click());
    const report = await save();
    const { pages } = await readPdf(report.bytes);
    for (const page of pages) expect(page.toLowerCase()).toContain('invented');
    expect(Buffer.from((await save()).bytes).equals(Buffer.from(report.bytes))).toBe(true);
  });

  test('its report is authentic, and says that it proves nothing', async () => {
    await visit(culet, '#/reports', 'Reports');
    const report = await fileSavedBy(culet, () => culet.page.getByRole('button', { name: 'Save PDF' }).first().click());
    await visit(culet, '#/check', 'Check a report');
    await culet.page.getByLabel('PDF of a report').setInputFiles({ name: 'report.pdf', mimeType: 'application/pdf', buffer: Buffer.from(report.bytes) });
    const answer = culet.page.getByRole('status', { name: 'Answer' });
    await answer.getByRole('heading', { name: 'Authentic' }).waitFor();
    await answer.getByText('laboratory, stones and key are invented, and it proves nothing').waitFor();
    await answer.getByText('It is the newest revision that this casebook holds.').waitFor();
    await lookAt(culet, 'check-authentic');
  });

  test('is left again, stays on the disk, and does not stand in the way of an own casebook', async () => {
    await visit(culet, '#/house', 'House');
    await culet.page.getByRole('button', { name: 'Leave the demonstration' }).click();
    await culet.page.getByRole('heading', { name: 'Start my own casebook' }).waitFor();
    // Left, it is closed: its file is whole and may be copied.
    copyFileSync(file, built);
    await culet.page.getByRole('button', { name: 'Open the demonstration' }).click();
    await culet.page.getByRole('dialog', { name: 'Who works at this window?' }).waitFor();
    expect(culet.problems()).toEqual([]);
  });
});

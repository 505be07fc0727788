import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { renderReport } from '../../main/print/render-report.ts';
import { sampleReport } from '../unit/main/print/sample-report.ts';
import { fingerprintOf, inGroups } from '../../app/signature/fingerprint.ts';
import { writePublicKeyFile } from '../../app/signature/public-key-file.ts';
import { sampleKey, signedSample } from '../unit/main/signature/signed-sample.ts';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook } from './steps/begin-casebook.ts';
import { lookAt, visit } from './steps/look-at.ts';

/** Reports that somebody brings, in a folder of their own. */
const folder = mkdtempSync(join(tmpdir(), 'culet-reports-'));
const file = (name: string): string => join(folder, name);

beforeAll(async () => {
  const pdf = await signedSample();
  const altered = new Uint8Array(pdf);
  altered[altered.length - 2000]! ^= 1;
  const raw = Buffer.from(pdf).toString('latin1');
  altered[raw.indexOf('stream\n', raw.indexOf('/Subtype /image#2Fpng')) + 20]! ^= 1;
  writeFileSync(file('S-2026-0088.pdf'), pdf);
  writeFileSync(file('altered.pdf'), altered);
  writeFileSync(file('older.pdf'), await renderReport(sampleReport()));
  writeFileSync(file('notes.pdf'), 'no PDF at all');
  writeFileSync(file('handed.pem'), writePublicKeyFile({ laboratory: 'Saltmarsh Gem Laboratory', publicKey: sampleKey(), madeAt: '2026-01-01T00:00:00.000Z', invented: true }));
});
afterAll(() => { rmSync(folder, { recursive: true, force: true }); });

describe.each(availableHosts())('checking a report in %s', (host) => {
  let culet: OpenCulet;
  beforeAll(async () => { culet = await openCulet({ host }); });
  afterAll(async () => { await culet.close(); });

  const answer = () => culet.page.getByRole('status', { name: 'Answer' });
  const bring = async (name: string, shown: string): Promise<string> => {
    await culet.page.getByLabel('PDF of a report').setInputFiles(file(name));
    await answer().getByRole('heading', { name: shown }).waitFor();
    await answer().getByText(`${name},`).waitFor();
    return (await answer().textContent()) ?? '';
  };

  test('needs no casebook: the first screen takes a report and says whose key is not known', async () => {
    await culet.page.getByRole('button', { name: 'Check a report' }).click();
    await culet.page.getByText('Drop the PDF of a report or the zip of a bundle anywhere on this page, or').waitFor();
    await lookAt(culet, 'check-empty');
    const text = await bring('S-2026-0088.pdf', 'Unaltered, key unknown');
    expect(text).toContain('Every byte of this report is as it was signed.');
    expect(text).toMatch(/Fingerprint([0-9a-f]{4} ){15}[0-9a-f]{4}/);
    await lookAt(culet, 'check-unknown-key');
  });

  test('names what was altered', async () => {
    const text = await bring('altered.pdf', 'Altered');
    expect(text).toContain('The pages, or what holds the file together, are not as they were signed.');
    expect(text).toContain('The attached record photo-table.png is not the one that was signed, or is missing.');
    await lookAt(culet, 'check-altered');
  });

  test('tells an older report and something else apart', async () => {
    expect(await bring('older.pdf', 'Without a signature')).toContain('issued before reports were signed');
    expect(await bring('notes.pdf', 'Not a report')).toContain('This is not a report of Culet');
  });

  test('a file that is dropped on the page is checked, one at a time', async () => {
    await culet.page.evaluate(() => {
      const transfer = new DataTransfer();
      for (const name of ['dropped.pdf', 'second.pdf']) transfer.items.add(new File(['%PDF-1.7 of somebody'], name));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
    });
    await answer().getByText('dropped.pdf,').waitFor();
    await culet.page.getByText('One file at a time: “dropped.pdf” was checked.').waitFor();
  });

  test('is reached from the reports by its key, and left by Escape', async () => {
    await culet.page.getByRole('button', { name: 'Back' }).click();
    await beginCasebook(culet);
    await visit(culet, '#/reports', 'Reports');
    await culet.page.keyboard.press('f');
    await culet.page.getByRole('heading', { level: 1, name: 'Check a report' }).waitFor();
    await bring('S-2026-0088.pdf', 'Unaltered, key unknown');
    await lookAt(culet, 'check-in-casebook');
    await culet.page.keyboard.press('Escape');
    await culet.page.getByRole('heading', { level: 1, name: 'Reports' }).waitFor();
    expect(culet.page.url()).toContain('#/reports');
  });

  test('a key that was handed over and compared makes the report the other laboratory’s, until it is no longer trusted', async () => {
    await visit(culet, '#/house', 'House');
    await culet.page.getByRole('button', { name: 'Add a key' }).click();
    const sheet = culet.page.getByRole('dialog', { name: 'Key of another laboratory' });
    await sheet.getByLabel('Public key, as the laboratory handed it out').fill('-----BEGIN PUBLIC KEY-----\nnonsense\n-----END PUBLIC KEY-----');
    await sheet.getByText('but not one that Culet knows').waitFor();
    await sheet.getByLabel('File of the public key').setInputFiles(file('handed.pem'));
    await sheet.getByText(inGroups(fingerprintOf(sampleKey())), { exact: true }).waitFor();
    expect(await sheet.getByLabel('Whose key it is').inputValue()).toBe('Saltmarsh Gem Laboratory');
    await culet.page.keyboard.press('Control+Enter');
    await sheet.getByText('Write how you made sure that the key is theirs').waitFor();
    await sheet.getByLabel('How you made sure').fill('fingerprint read out by telephone');
    await lookAt(culet, 'known-key');
    await culet.page.keyboard.press('Control+Enter');
    await sheet.waitFor({ state: 'detached' });
    await lookAt(culet, 'known-keys');
    await visit(culet, '#/check', 'Check a report');
    expect(await bring('S-2026-0088.pdf', 'Authentic')).toContain('Saltmarsh Gem Laboratory');
    await visit(culet, '#/house', 'House');
    await culet.page.getByRole('button', { name: 'No longer trust the key of Saltmarsh Gem Laboratory' }).click();
    await culet.page.getByText('Saltmarsh Gem Laboratory, no longer trusted').waitFor();
    await visit(culet, '#/check', 'Check a report');
    await bring('S-2026-0088.pdf', 'Unaltered, key unknown');
  });
});

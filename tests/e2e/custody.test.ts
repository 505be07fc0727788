import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { usualCase } from './steps/hand-overs.ts';
import { focusedName } from './steps/keyboard.ts';
import { lookAt } from './steps/look-at.ts';
import { fileSavedBy } from './steps/save-file.ts';

const PDF = '%PDF-';
const startOf = (bytes: Uint8Array) => Buffer.from(bytes.slice(0, 5)).toString('latin1');

describe.each(availableHosts())('custody in %s', (host) => {
  let culet: OpenCulet;
  let caseId: string;
  beforeAll(async () => {
    culet = await openCulet({ host });
    await beginCasebook(culet);
    ({ caseId } = await callDoor(culet, 'cases.takeIn', usualCase('Marrow Lane Jewellers')));
    await culet.page.getByRole('link', { name: 'Custody' }).click();
    await culet.page.getByRole('heading', { level: 1, name: 'Custody' }).waitFor();
  });
  afterAll(async () => { await culet.close(); });
  const sheet = () => culet.page.getByRole('dialog');
  const shelf = (name: RegExp) => culet.page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name });
  const pick = (label: string) => culet.page.getByRole('checkbox', { name: new RegExp(`/ ${label}$`) }).check();

  test('every item stands under its place', async () => {
    await shelf(/^safe, tray 2/).click();
    await culet.page.getByRole('row', { name: /small stones/ }).waitFor();
    expect(await culet.page.getByRole('table', { name: 'Items in custody' }).getByRole('row').count()).toBe(4);
    await lookAt(culet, 'custody');
  });

  test('two items leave the house together, with a form that both hands sign', async () => {
    await pick('A');
    await pick('B');
    await culet.page.keyboard.press('h');
    await culet.page.keyboard.press('Control+Enter');
    await sheet().getByText('Write who takes it.').waitFor();
    await sheet().getByText('Write by which day it is expected back').waitFor();
    await lookAt(culet, 'hand-over', ['light']);
    await sheet().getByRole('textbox', { name: 'To', exact: true }).fill('Tidewrack University (invented)');
    await sheet().getByRole('textbox', { name: 'For what' }).fill('photoluminescence at 77 K');
    await sheet().getByRole('textbox', { name: 'Expected back' }).fill('2099-01-31');
    await culet.page.keyboard.press('Control+Enter');
    const form = await fileSavedBy(culet, () => sheet().getByRole('button', { name: 'Print the form' }).click());
    expect([form.name, startOf(form.bytes)]).toEqual([expect.stringMatching(/^Hand-over C-\d{4}-0001\.pdf$/), PDF]);
    await sheet().getByRole('button', { name: 'Done' }).click();
    await shelf(/^out of the house/).click();
    await culet.page.getByRole('row', { name: /out with Tidewrack University/ }).first().waitFor();
    expect(await culet.page.getByRole('row', { name: /out with Tidewrack University/ }).count()).toBe(2);
  });

  test('printing the form leaves the keys with the sheet, and counting what is out is warned of', async () => {
    await pick('A');
    await culet.page.keyboard.press('c');
    await sheet().getByText(/\/ A: out of the house on record/).waitFor();
    await culet.page.keyboard.press('Escape');
    await sheet().waitFor({ state: 'detached' });
    await culet.page.keyboard.press('h');
    await sheet().getByRole('textbox', { name: 'To', exact: true }).fill('Tidewrack University (invented)');
    await sheet().getByRole('textbox', { name: 'Expected back' }).fill('2099-01-31');
    await culet.page.keyboard.press('Control+Enter');
    await sheet().getByRole('button', { name: 'Done' }).waitFor();
    await expect.poll(() => focusedName(culet.page)).toBe('Done');
    await culet.page.keyboard.press('Shift+Tab');
    await fileSavedBy(culet, () => culet.page.keyboard.press('Enter'));
    expect(await focusedName(culet.page)).toBe('Print the form');
    await culet.page.keyboard.press('Escape');
    await sheet().waitFor({ state: 'detached' });
    await expect.poll(() => focusedName(culet.page)).toContain('choose all shown');
  });

  test('the item says where it is, and is taken back with its weight compared', async () => {
    await culet.page.evaluate((hash) => { window.location.hash = hash; }, `#/case/${caseId}`);
    await culet.page.getByRole('navigation', { name: 'This case' }).getByRole('button', { name: /^A loose/ }).click();
    await culet.page.getByText('out with Tidewrack University (invented), back by 31 Jan 2099').first().waitFor();
    await culet.page.getByRole('group', { name: 'Custody' }).getByRole('button', { name: 'Take back' }).click();
    await sheet().getByRole('combobox', { name: 'Where to' }).or(sheet().getByRole('textbox', { name: 'Where to' })).fill('safe, tray 3');
    await sheet().getByRole('textbox', { name: 'Weight' }).fill('1.0100');
    await culet.page.keyboard.press('Control+Enter');
    await culet.page.locator('.note').filter({ hasText: 'differs from 1.0234 ct' }).waitFor();
    await sheet().getByRole('button', { name: 'Done' }).click();
    await culet.page.getByText('A weight of this item differs by more than the tolerance').waitFor();
  });

  test('the chain of custody is printed on its own', async () => {
    await culet.page.getByRole('radio', { name: /^custody$/ }).click();
    const printed = await fileSavedBy(culet, () => culet.page.getByRole('button', { name: 'Chain of custody of A' }).click());
    expect([printed.name, startOf(printed.bytes)]).toEqual([expect.stringMatching(/^Chain of custody C-\d{4}-0001.*A\.pdf$/), PDF]);
  });
});

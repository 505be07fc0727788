import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { usualCase } from './steps/hand-overs.ts';
import { focusedName } from './steps/keyboard.ts';
import { dropFiles } from './stone/drop-files.ts';

describe.each(availableHosts())('the lists in %s', (host) => {
  let culet: OpenCulet;
  beforeAll(async () => {
    culet = await openCulet({ host });
    await beginCasebook(culet);
    for (const client of ['Zedlitz Pawn', 'Harrow & Pell', 'Marrow Lane Jewellers']) await callDoor(culet, 'cases.takeIn', usualCase(client));
  });
  afterAll(async () => { await culet.close(); });

  async function visit(room: string): Promise<void> {
    await culet.page.getByRole('link', { name: new RegExp(`^${room}`) }).click();
    await culet.page.getByRole('heading', { level: 1, name: room }).waitFor();
  }
  const rows = (table: string) => culet.page.getByRole('table', { name: table }).getByRole('row');
  const sheet = () => culet.page.getByRole('dialog');

  test('cases are narrowed by words, reached with a slash, and by their state', async () => {
    await visit('Cases');
    await expect.poll(() => rows('Cases').count()).toBe(4);
    await culet.page.keyboard.press('/');
    await expect.poll(() => focusedName(culet.page)).toBe('Number, client, description, remark');
    await culet.page.keyboard.type('harrow');
    await expect.poll(() => rows('Cases').count()).toBe(2);
    expect(await rows('Cases').nth(1).innerText()).toContain('Harrow & Pell');
    await culet.page.keyboard.press('Escape');
    await expect.poll(() => rows('Cases').count()).toBe(4);
    await culet.page.getByRole('radio', { name: 'reported' }).click();
    await culet.page.getByText('No case fits').waitFor();
    await culet.page.getByRole('radio', { name: 'all' }).click();
  });

  test('files dropped where nothing takes them get an answer, which stays until it is read', async () => {
    await dropFiles(culet.page, [{ name: 'curve.txt', mimeType: 'text/plain', buffer: Buffer.from('500 1') }]);
    const answer = culet.page.locator('.note').filter({ hasText: 'Open a stone first, then drop the file there' });
    await answer.waitFor();
    await answer.getByRole('button', { name: 'Dismiss' }).click();
    await answer.waitFor({ state: 'detached' });
  });

  test('sort up, down and back, and say so', async () => {
    const clients = async () => (await rows('Cases').allInnerTexts()).slice(1).map((text) => /Zedlitz|Harrow|Marrow/.exec(text)?.[0]);
    const head = culet.page.getByRole('columnheader', { name: 'Client' });
    await expect.poll(clients).toEqual(['Marrow', 'Harrow', 'Zedlitz']);
    const state = async () => [await clients(), await head.getAttribute('aria-sort')];
    // The order is made where the records are.
    await head.getByRole('button').click();
    await expect.poll(state).toEqual([['Harrow', 'Marrow', 'Zedlitz'], 'ascending']);
    await head.getByRole('button').click();
    await expect.poll(state).toEqual([['Zedlitz', 'Marrow', 'Harrow'], 'descending']);
    await head.getByRole('button').click();
    await expect.poll(clients).toEqual(['Marrow', 'Harrow', 'Zedlitz']);
  });

  test('are walked with the arrows and opened with Enter', async () => {
    await rows('Cases').nth(1).focus();
    await culet.page.keyboard.press('ArrowDown');
    await expect.poll(() => focusedName(culet.page)).toContain('Harrow & Pell');
    await culet.page.keyboard.press('End');
    await expect.poll(() => focusedName(culet.page)).toContain('Zedlitz Pawn');
    await culet.page.keyboard.press('Enter');
    await culet.page.getByRole('heading', { level: 1, name: /Zedlitz Pawn/ }).waitFor();
  });

  test('stones of all cases stand in one list and lead to the stone', async () => {
    await visit('Stones');
    const { total } = await callDoor(culet, 'stones.list', {});
    expect(total).toBe(21);
    await culet.page.keyboard.press('/');
    await culet.page.keyboard.type('zedlitz');
    await expect.poll(() => rows('Stones').count()).toBe(8);
    await rows('Stones').filter({ hasText: 'B-3' }).click();
    await culet.page.getByRole('heading', { level: 1, name: /B-3/ }).waitFor();
  });

  test('an instrument is refused without a name or a method, then added', async () => {
    await visit('Instruments');
    await culet.page.getByText('No instrument yet').waitFor();
    await culet.page.keyboard.press('a');
    await culet.page.keyboard.press('Control+Enter');
    await sheet().getByText('Name the instrument as the bench calls it.').waitFor();
    await sheet().getByText('Choose at least one method.').waitFor();
    await expect.poll(() => focusedName(culet.page)).toBe('Name, as the bench calls it');
    await culet.page.keyboard.type('Bench spectrometer');
    await sheet().getByRole('checkbox', { name: 'Photoluminescence' }).check();
    await sheet().getByRole('textbox', { name: 'Laser, calibrated' }).fill('green');
    await culet.page.keyboard.press('Control+Enter');
    await sheet().getByText('Write a number, for instance 532.1.').waitFor();
    await sheet().getByRole('textbox', { name: 'Laser, calibrated' }).fill('532,15');
    await culet.page.keyboard.press('Control+Enter');
    await sheet().waitFor({ state: 'detached' });
    await culet.page.getByText('never checked, every 30 days').waitFor();
    await culet.page.getByText('laser 532.15 nm').waitFor();
    expect(await culet.page.getByRole('link', { name: /^Instruments/ }).innerText()).toMatch(/1 !/);
  });

  test('its checks put it in order or out of order', async () => {
    const check = async (reference: string, outcome: string, passed: boolean) => {
      await culet.page.getByRole('button', { name: 'Record a check' }).click();
      await sheet().getByRole('textbox', { name: 'Checked with' }).fill(reference);
      await sheet().getByRole('textbox', { name: 'What came out' }).fill(outcome);
      if (!passed) await sheet().getByRole('radio', { name: 'not in order' }).click();
      await culet.page.keyboard.press('Control+Enter');
      await sheet().waitFor({ state: 'detached' });
    };
    await check('mercury lamp', '546.11 nm for 546.075', true);
    await culet.page.getByText('in order, every 30 days').waitFor();
    expect(await culet.page.getByRole('link', { name: /^Instruments/ }).innerText()).not.toContain('!');
    await check('mercury lamp', '547.9 nm for 546.075', false);
    await culet.page.getByText('last check failed, every 30 days').waitFor();
    await visit('Bench');
    await culet.page.getByText('last check failed; runs since are marked').waitFor();
  });

  test('said nothing wrong on the way', () => {
    expect(culet.problems()).toEqual([]);
  });
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { usualCase } from './steps/hand-overs.ts';
import { focusedName } from './steps/keyboard.ts';

describe.each(availableHosts())('the keys in %s', (host) => {
  let culet: OpenCulet;
  let number = '';
  beforeAll(async () => {
    culet = await openCulet({ host });
    await beginCasebook(culet);
    ({ number } = await callDoor(culet, 'cases.takeIn', usualCase('Marrow Lane Jewellers')));
    await heading('Bench').waitFor();
  });
  afterAll(async () => { await culet.close(); });
  const heading = (name: string | RegExp) => culet.page.getByRole('heading', { level: 1, name });
  const press = (chord: string) => culet.page.keyboard.press(chord);
  const palette = () => culet.page.getByRole('dialog', { name: 'Find anything' });
  async function find(text: string, option: string | RegExp): Promise<void> {
    await press('Control+k');
    await palette().waitFor();
    await culet.page.keyboard.type(text);
    await palette().getByRole('option', { name: option }).first().waitFor();
  }

  test('the palette finds a case by its number', async () => {
    await find(number, /case$/);
    await press('Enter');
    await heading(/Marrow Lane Jewellers/).waitFor();
  });

  test('a stone by its label', async () => {
    await find(`${number} B-3`, /stone$/);
    await palette().getByRole('option', { name: /B-3.*stone$/ }).click();
    await heading(/B-3/).waitFor();
  });

  test('a client by a word of the name, and then the client’s cases', async () => {
    await find('marrow', /client$/);
    await palette().getByRole('option', { name: /client$/ }).click();
    await heading('Cases').waitFor();
    await expect.poll(() => culet.page.getByRole('table', { name: 'Cases' }).getByRole('row').count()).toBe(2);
  });

  test('an action by its words', async () => {
    // Its first letters are also in the name of the client: Enter must not open what those found.
    await find('ledg', 'Verify the ledgers');
    await press('Enter');
    await heading('Ledgers').waitFor();
  });

  test('says so where nothing is found', async () => {
    await press('Control+k');
    await culet.page.keyboard.type('qqqqqq');
    await palette().getByText('Nothing in this casebook has that in it.').waitFor();
    await press('Escape');
    await palette().waitFor({ state: 'detached' });
  });

  test('Escape closes the palette and gives the cursor back to where it was', async () => {
    await culet.page.getByRole('link', { name: 'Reports' }).focus();
    await find('marrow', /case$/);
    for (let n = 0; n < 6; n += 1) await press('Tab');
    expect(await culet.page.evaluate(() => document.activeElement?.closest('[role=dialog]') !== null)).toBe(true);
    await press('Escape');
    await palette().waitFor({ state: 'detached' });
    await expect.poll(() => focusedName(culet.page)).toContain('Reports');
  });

  test('a sheet holds the cursor and keeps the view’s keys from working beneath it', async () => {
    await culet.page.getByRole('link', { name: 'Instruments' }).click();
    await heading('Instruments').waitFor();
    await culet.page.getByRole('button', { name: 'Add an instrument' }).focus();
    await press('Enter');
    const sheet = culet.page.getByRole('dialog', { name: 'A new instrument' });
    await sheet.waitFor();
    for (let n = 0; n < 40; n += 1) {
      await press('Tab');
      expect(await culet.page.evaluate(() => document.activeElement?.closest('[role=dialog]') !== null)).toBe(true);
    }
    await sheet.getByRole('button', { name: 'Close' }).focus();
    await press('n');
    await press('Control+k');
    expect([await culet.page.getByRole('dialog').count(), await culet.page.evaluate(() => window.location.hash)]).toEqual([1, '#/instruments']);
    await press('Escape');
    await sheet.waitFor({ state: 'detached' });
    await expect.poll(() => focusedName(culet.page)).toContain('Add an instrument');
  });

  test('letters typed into a field are letters', async () => {
    await culet.page.getByRole('link', { name: 'Cases' }).click();
    await heading('Cases').waitFor();
    await press('/');
    await culet.page.keyboard.type('never n/v');
    expect([await culet.page.getByRole('searchbox').inputValue(), await culet.page.evaluate(() => window.location.hash)]).toEqual(['never n/v', '#/cases']);
    await press('Escape');
    await press('n');
    await heading('Take in a case').waitFor();
  });

  test('what has the cursor shows it', async () => {
    await culet.page.getByRole('link', { name: 'Bench' }).click();
    await heading('Bench').waitFor();
    const bare: string[] = [];
    for (let n = 0; n < 16; n += 1) {
      await press('Tab');
      const shown = await culet.page.evaluate(() => {
        const element = document.activeElement;
        if (element === null || element === document.body) return true;
        const drawn = (one: Element | null) => one !== null && getComputedStyle(one).outlineStyle !== 'none' && Number.parseFloat(getComputedStyle(one).outlineWidth) > 0;
        return drawn(element) || drawn(element.closest('.field-box, .filter-box'));
      });
      if (!shown) bare.push(await focusedName(culet.page));
    }
    expect(bare).toEqual([]);
  });

  test.runIf(host === 'loopback')('a second tab shows what the first one did', async () => {
    const second = await culet.page.context().newPage();
    await second.goto(new URL('/#/cases', culet.url).href);
    const rows = second.getByRole('table', { name: 'Cases' }).getByRole('row');
    await expect.poll(() => rows.count()).toBe(2);
    await callDoor(culet, 'cases.takeIn', usualCase('Harrow & Pell'));
    await expect.poll(() => rows.count()).toBe(3);
    await second.close();
  });
});

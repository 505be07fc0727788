import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import type { OpenCulet } from './harness/launch.ts';
import { focusedName } from './steps/keyboard.ts';
import { keptData, workAs } from './steps/kept-data.ts';
import { PASSWORD } from './steps/sign-in.ts';

describe.each(availableHosts())('the first start in %s', (host) => {
  const data = keptData(host);
  let culet: OpenCulet;
  afterAll(() => data.remove());
  const field = (label: string) => culet.page.getByRole('textbox', { name: label, exact: true });
  const press = (name: string) => culet.page.getByRole('button', { name, exact: true }).click();

  test('offers an own casebook and the demonstration, and names the file', async () => {
    culet = await data.open();
    await culet.page.getByRole('heading', { name: 'Start my own casebook' }).waitFor();
    await culet.page.getByRole('heading', { name: 'Open the demonstration casebook' }).waitFor();
    expect(await culet.page.getByText(join(data.dataDir, 'Casebook.culet')).count()).toBe(1);
    expect(existsSync(join(data.dataDir, 'Casebook.culet'))).toBe(false);
  });

  test('refuses to begin without names, says so beside each field, and puts the cursor into the first', async () => {
    await press('Start my own');
    await press('Start the casebook');
    await culet.page.getByText('Write the laboratory’s name as it stands on its reports.').waitFor();
    await culet.page.getByText('Write the person’s name.').waitFor();
    await expect.poll(() => focusedName(culet.page)).toBe('Laboratory’s name, as on its reports');
    expect(await field('Laboratory’s name, as on its reports').getAttribute('aria-invalid')).toBe('true');
    expect(existsSync(join(data.dataDir, 'Casebook.culet'))).toBe(false);
  });

  test('refuses a person without a role', async () => {
    await field('Laboratory’s name, as on its reports').fill('Tarn Hill Gem Laboratory (invented)');
    await field('Name').fill('Ilse Marden-Okoro');
    for (const role of ['intake', 'examiner', 'second examiner', 'appraiser', 'manager']) await culet.page.getByRole('checkbox', { name: role, exact: true }).uncheck();
    await press('Start the casebook');
    await culet.page.getByText('Choose at least one role.').waitFor();
    for (const role of ['intake', 'examiner', 'manager']) await culet.page.getByRole('checkbox', { name: role, exact: true }).check();
  });

  test('begins with what was typed and puts the first person at the window', async () => {
    await field('Address').fill('3 Tarn Hill\nInvented Town');
    await culet.page.getByRole('combobox', { name: 'Time zone' }).selectOption('Europe/Berlin');
    await culet.page.getByLabel('Password', { exact: true }).fill('Ilse Marden-Okoro');
    await culet.page.getByLabel('Password, once more').fill('Ilse Marden-Okoro');
    await press('Start the casebook');
    await culet.page.getByText(/This is a name that anyone would try first/).waitFor();
    await culet.page.getByLabel('Password', { exact: true }).fill(PASSWORD);
    await press('Start the casebook');
    await culet.page.getByText('The two do not agree.').waitFor();
    await culet.page.getByLabel('Password, once more').fill(PASSWORD);
    await press('Start the casebook');
    const sheet = culet.page.getByRole('dialog', { name: 'The recovery sheet' });
    await sheet.waitFor();
    // A print would open the system's own sheet: here only what it would show is looked at.
    await culet.page.evaluate(() => { window.print = () => undefined; });
    await sheet.getByRole('button', { name: 'Print the sheet' }).click();
    await culet.page.emulateMedia({ media: 'print' });
    expect(await culet.page.locator('#root').isVisible()).toBe(false);
    expect(await sheet.getByText(/^Laboratory: /).isVisible()).toBe(true);
    const place = await sheet.locator('.recovery-code').boundingBox();
    expect(place!.y).toBeLessThan(400);
    await culet.page.emulateMedia({ media: 'screen' });
    await culet.page.evaluate(() => { window.dispatchEvent(new Event('afterprint')); });
    await culet.page.getByRole('navigation', { name: 'Rooms', includeHidden: true }).waitFor();
    expect(await sheet.getByText(/^Laboratory: /).isVisible()).toBe(false);
    await sheet.getByText(/^[0-9A-Z]{4}(-[0-9A-Z]{4}){5}$/).waitFor();
    await press('It is put away');
    await culet.page.getByRole('heading', { level: 1, name: 'Bench' }).waitFor();
    await culet.page.getByText('Nothing waits').waitFor();
    await culet.page.getByRole('button', { name: /Ilse Marden-Okoro/ }).waitFor();
    expect(existsSync(join(data.dataDir, 'Casebook.culet'))).toBe(true);
    await culet.page.getByRole('link', { name: 'House', exact: true }).first().click();
    expect(await field('Address').inputValue()).toBe('3 Tarn Hill\nInvented Town');
    expect(await culet.page.getByText('IMO', { exact: true }).count()).toBe(1);
  });

  test('opens the same casebook the next time and asks for the password', async () => {
    culet = await data.open();
    await workAs(culet, 'Ilse Marden-Okoro');
    await culet.page.getByRole('button', { name: /Ilse Marden-Okoro/ }).waitFor();
    expect(culet.problems()).toEqual([]);
  });
});

import { existsSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook, LABORATORY } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { lookAt } from './steps/look-at.ts';
import { workAs } from './steps/kept-data.ts';
import { PASSWORD } from './steps/sign-in.ts';

describe.each(availableHosts())('the house in %s', (host) => {
  let culet: OpenCulet;
  beforeAll(async () => {
    culet = await openCulet({ host });
    await beginCasebook(culet);
    await culet.page.getByRole('link', { name: 'House', exact: true }).click();
    await culet.page.getByRole('heading', { level: 1, name: /House/ }).waitFor();
  });
  afterAll(async () => { await culet.close(); });
  const sheet = () => culet.page.getByRole('dialog');
  const field = (name: string) => culet.page.getByRole('textbox', { name, exact: true });
  const keep = () => culet.page.getByRole('button', { name: 'Keep the changes' }).click();

  test('keeps the laboratory’s name, and refuses numbers that are none', async () => {
    await field('Weights may differ by').fill('much');
    await field('Two-phonon coefficient').fill('99');
    await keep();
    await culet.page.getByText(/“much” is not a weight in carat/).waitFor();
    await field('Weights may differ by').fill('0,003');
    await keep();
    await expect.poll(() => field('Two-phonon coefficient').getAttribute('aria-invalid')).toBe('true');
    await field('Two-phonon coefficient').fill('12.3');
    await field('Name, as on its reports').fill('Tarn Hill & Daughters (invented)');
    await culet.page.getByRole('radiogroup', { name: 'Readers of reports' }).getByText('United States').click();
    await keep();
    await culet.page.getByText('Kept.').waitFor();
    const { laboratory } = await callDoor(culet, 'casebook.status', {});
    expect([laboratory!.name, laboratory!.settings.weightToleranceCarat, laboratory!.settings.twoPhononCoefficient, laboratory!.settings.readers]).toEqual(['Tarn Hill & Daughters (invented)', 30, 12.3, 'united-states']);
  });

  test('words the laboratory’s texts in versions, and names who may issue what', async () => {
    const texts = culet.page.getByRole('region', { name: 'Texts of reports' });
    await texts.getByRole('combobox', { name: 'Text' }).selectOption({ label: 'Disclaimer' });
    const words = texts.getByRole('list', { name: 'Words to look at again' });
    await texts.getByRole('textbox', { name: 'Disclaimer, as it came' }).fill('Only genuine stones are certified.');
    await words.getByText('ISO 18323:2015', { exact: false }).waitFor();
    await texts.getByRole('textbox', { name: 'Disclaimer, as it came' }).fill('Not to be used in advertising.');
    await words.waitFor({ state: 'detached' });
    await texts.getByRole('button', { name: 'Keep as version 1' }).click();
    await texts.getByText('Write why the text is changed.').waitFor();
    await texts.getByRole('textbox', { name: 'Why the text is changed' }).fill('asked for by counsel');
    await texts.getByRole('button', { name: 'Keep as version 1' }).click();
    await texts.getByRole('textbox', { name: 'Disclaimer, version 1' }).waitFor();
    await texts.getByText('One version').click();
    await texts.getByText(/asked for by counsel/).waitFor();
    const signers = culet.page.getByRole('region', { name: 'Who may issue reports' });
    await signers.getByRole('combobox', { name: 'Person' }).selectOption({ label: LABORATORY.person });
    await signers.getByRole('checkbox', { name: 'lot' }).check();
    await signers.getByLabel('Since').fill('2026-01-01');
    await signers.getByRole('button', { name: 'Keep it' }).click();
    await signers.getByText(`${LABORATORY.person}: lot, since 1 Jan 2026`).waitFor();
    await lookAt(culet, 'house-texts');
  });

  test('makes a template of its own, changes it in versions, withdraws it and offers it again', async () => {
    const templates = culet.page.getByRole('region', { name: 'Templates of reports' });
    await templates.getByRole('button', { name: 'Make a template' }).click();
    await culet.page.keyboard.press('Control+Enter');
    await sheet().getByText('Give the template a name.').waitFor();
    await sheet().getByRole('textbox', { name: 'Name' }).fill('Short form for the trade counter');
    await sheet().getByText('No case has a single stone yet.', { exact: false }).waitFor();
    await sheet().getByRole('checkbox', { name: 'Signatures' }).click();
    await sheet().getByText(/^Left out, and asked for by ISO\/IEC 17025:2017: .*Signatures/).waitFor();
    await lookAt(culet, 'house-template-new');
    await sheet().getByRole('checkbox', { name: 'Signatures' }).click();
    await culet.page.keyboard.press('Control+Enter');
    await templates.getByText('single stone · version 1').waitFor();
    const change = templates.getByRole('button', { name: 'Change the template Short form for the trade counter' });
    await change.click();
    await sheet().getByRole('textbox', { name: 'Title', exact: true }).fill('Short screening report');
    await sheet().getByRole('radio', { name: 'Letter' }).click();
    await culet.page.keyboard.press('Control+Enter');
    await templates.getByText('single stone · version 2').waitFor();
    await change.click();
    await sheet().getByText('2 versions').click();
    await sheet().getByRole('button', { name: 'Take version 1 into the form' }).click();
    expect(await sheet().getByRole('textbox', { name: 'Title', exact: true }).inputValue()).toBe('Diamond screening report');
    await sheet().getByRole('button', { name: 'Withdraw it' }).click();
    await templates.getByText('One is no longer offered').click();
    expect((await callDoor(culet, 'reportTemplates.list', {})).map((one) => one.content.name)).not.toContain('Short form for the trade counter');
    await change.click();
    await culet.page.keyboard.press('Control+Enter');
    await templates.getByText('single stone · version 4').waitFor();
    await lookAt(culet, 'house-templates');
  });

  test('takes in a second person, who then works at the window under their own name', async () => {
    await culet.page.getByRole('button', { name: 'Add a person' }).click();
    await culet.page.keyboard.press('Control+Enter');
    await sheet().getByText('Write the person’s name.').waitFor();
    await sheet().getByRole('textbox', { name: 'Name' }).fill('Tobias Wren');
    await culet.page.keyboard.press('Control+Enter');
    const code = (await sheet().locator('.one-time-code').innerText()).trim();
    await sheet().getByRole('button', { name: 'It is handed over' }).click();
    await sheet().waitFor({ state: 'detached' });
    const added = (await callDoor(culet, 'people.list', {})).find((one) => one.name === 'Tobias Wren')!;
    await callDoor(culet, 'people.choosePassword', { personId: added.id, code, password: PASSWORD });
    await culet.page.reload();
    await culet.page.getByRole('button', { name: /Tobias Wren/ }).waitFor();
    expect((await callDoor(culet, 'casebook.status', {})).me?.name).toBe('Tobias Wren');
  });

  test('says who may do what, in words, where the role is missing', async () => {
    await culet.page.getByRole('button', { name: 'Keep a copy now' }).click();
    const refusal = culet.page.locator('.note-bad').filter({ hasText: /manager/ });
    await refusal.getByRole('button', { name: 'Dismiss' }).click();
    await culet.page.getByRole('button', { name: /Tobias Wren/ }).click();
    await workAs(culet, LABORATORY.person);
  });

  test('keeps a checked copy when asked', async () => {
    await culet.page.getByRole('button', { name: 'Keep a copy now' }).click();
    const note = culet.page.locator('.note').filter({ hasText: 'Copied and checked: ' });
    await note.waitFor();
    const file = /Copied and checked: (.+\.culet)/.exec(await note.innerText())![1]!;
    expect(existsSync(file)).toBe(true);
  });

  test('does not lock itself out: somebody must remain who may change it', async () => {
    const person = culet.page.getByRole('listitem').filter({ hasText: LABORATORY.person });
    await person.getByRole('button', { name: 'Edit' }).click();
    await sheet().getByRole('checkbox', { name: 'manager' }).uncheck();
    await culet.page.keyboard.press('Control+Enter');
    await sheet().locator('.trouble, .field-error').first().waitFor();
    await culet.page.keyboard.press('Escape');
    expect((await callDoor(culet, 'people.list', {})).find((p) => p.name === LABORATORY.person)!.roles).toContain('manager');
  });

  test('turns dark at the system’s evening, and stays as a person chose', async () => {
    const theme = () => culet.page.evaluate(() => document.documentElement.dataset['theme']);
    await culet.page.emulateMedia({ colorScheme: 'light' });
    await expect.poll(theme).toBe('light');
    await culet.page.emulateMedia({ colorScheme: 'dark' });
    await expect.poll(theme).toBe('dark');
    await culet.page.getByRole('radio', { name: 'light' }).click();
    expect(await theme()).toBe('light');
    await culet.page.reload();
    await culet.page.getByRole('heading', { level: 1, name: /House/ }).waitFor();
    expect(await theme()).toBe('light');
    await culet.page.getByRole('radio', { name: 'light' }).press('ArrowRight');
    expect([await theme(), await culet.page.evaluate(() => document.activeElement?.textContent)]).toEqual(['dark', 'dark']);
  });
});

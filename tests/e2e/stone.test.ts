import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { takeView, VIEW_SIZE } from './harness/take-view.ts';
import { givePassword } from './steps/sign-in.ts';
import { clippedParts, unnamedControls } from './steps/measure-view.ts';
import { resize, SMALLEST } from './steps/resize.ts';
import { dropFiles } from './stone/drop-files.ts';
import { makeHouse, type House } from './stone/make-house.ts';
import { openStone } from './stone/open-stone.ts';
import { brokenFile, columnsWithoutUnit, infraredFile, luminescenceFile } from './stone/stone-files.ts';

const SEED = 7;

// The tests of a host follow one another: each goes on where the one before ended.
describe.each(availableHosts())('one stone, from its first test to its confirmed conclusion, in %s', (host) => {
  let culet: OpenCulet;
  let house: House;
  beforeAll(async () => {
    culet = await openCulet({ host });
    house = await makeHouse(culet);
    await culet.page.reload();
  });
  afterAll(async () => {
    expect(culet.problems()).toEqual([]);
    await culet.close();
  });
  const sheet = () => culet.page.getByRole('dialog');
  const margin = () => culet.page.getByRole('region', { name: 'What the tests say' });
  const keep = async () => {
    await culet.page.keyboard.press('Control+Enter');
    await sheet().waitFor({ state: 'detached' });
  };
  /** In the smallest window nothing may be cut or out of reach. */
  const smallest = async (name: string) => {
    await resize(culet, SMALLEST);
    await takeView(culet, name, ['light']);
    expect.soft(await clippedParts(culet.page), name).toEqual([]);
    await resize(culet, VIEW_SIZE);
  };
  const confirmCautions = async () => { for (const box of await sheet().locator('.caution input[type=checkbox]').all()) await box.check(); };

  test('an empty stone says what to do first', async () => {
    await openStone(culet, house.stones['C-1']!, 'C-1');
    await culet.page.getByRole('heading', { name: 'No test yet' }).waitFor();
    await takeView(culet, 'stone-empty');
    await culet.page.keyboard.press(']');
    await culet.page.getByRole('heading', { level: 1, name: 'Stone D-1' }).waitFor();
    await culet.page.keyboard.press('[');
    await culet.page.getByRole('heading', { level: 1, name: 'Stone C-1' }).waitFor();
  });

  test('a file dropped on the stone is tried before it is kept, and needs its caution confirmed', async () => {
    await dropFiles(culet.page, [luminescenceFile('cvd-as-grown', SEED)]);
    await sheet().getByText('4\u00a0000 points, 410 to 850 nm').waitFor();
    await sheet().getByRole('heading', { name: 'Photoluminescence' }).waitFor();
    await takeView(culet, 'add-test');
    expect.soft(await unnamedControls(culet.page)).toEqual([]);
    await smallest('add-test-small');
    await culet.page.keyboard.press('Control+Enter');
    await sheet().getByText('Read the caution and confirm it.').first().waitFor();
    await confirmCautions();
    await keep();
  });

  test('the curve stands with its named lines, the diamond line among them', async () => {
    const { page } = culet;
    await page.getByText(/^Diamond line present: found at 428\.0\d nm/).waitFor();
    const names = await page.locator('.figure-layer text').allTextContents();
    for (const name of ['diamond Raman', 'SiV', 'NV', 'CVD pair', '428.03', 'wavelength in air, nm']) expect(names, name).toContain(name);
    await page.locator('.curve-surface .scatterlayer path.js-line').first().waitFor({ state: 'attached' });
    await page.getByRole('row', { name: /^R1 Photoluminescence, 404.93 nm/ }).waitFor();
  });

  test('what can’t be read, what says no unit, and what is kept already each get their sentence', async () => {
    await dropFiles(culet.page, [brokenFile('hpht', 3), columnsWithoutUnit('hpht', 4), { ...columnsWithoutUnit('hpht', 5), name: 'second.txt' }, luminescenceFile('cvd-as-grown', SEED, 'copy.jdx')]);
    await sheet().getByText('4 files: 1 read, 2 ask for their unit, 1 refused, see above').waitFor();
    // Cautions stand above the files and fill the sheet; what became of the files is in sight all the same.
    await expect.poll(() => sheet().locator('.trial').nth(1).evaluate((row) => row.getBoundingClientRect().bottom < document.querySelector('.dialog-foot')!.getBoundingClientRect().top)).toBe(true);
    await sheet().getByText('The same bytes are already kept: R1').waitFor();
    await sheet().getByText('Nothing of it is read.').waitFor();
    const unit = sheet().getByRole('combobox', { name: /does not say the unit/ }).first();
    await takeView(culet, 'add-test-trouble');
    await confirmCautions();
    await culet.page.keyboard.press('Control+Enter');
    await sheet().getByText('State the unit.').first().waitFor();
    await unit.selectOption('angstrom');
    await sheet().getByText('As stated for “angstrom-columns.txt”, which came with it.').waitFor();
    await expect.poll(() => sheet().getByText('4\u00a0000 points, 4100 to 8500 Å').count()).toBe(2);
    await sheet().getByText('4 files: 3 read, 1 refused, see above').waitFor();
    await culet.page.keyboard.press('Escape');
    await culet.page.getByRole('alertdialog', { name: 'Leave without keeping?' }).getByRole('button', { name: 'Leave', exact: true }).click();
    await sheet().waitFor({ state: 'detached' });
    expect(await culet.page.getByRole('row', { name: /^R\d/ }).count()).toBe(1);
  });

  test('an observation is entered with keys alone', async () => {
    const { page } = culet;
    await page.keyboard.press('t');
    await sheet().getByRole('radio', { name: /^Fluorescence, short-wave/ }).click();
    await sheet().getByText(/^Long-wave belongs first/).waitFor();
    await sheet().getByRole('radio', { name: /^Fluorescence, long-wave/ }).click();
    await confirmCautions();
    await sheet().getByRole('radiogroup', { name: 'Strength' }).getByRole('radio').first().focus();
    await page.keyboard.press('3');
    await page.keyboard.press('7');
    await takeView(culet, 'add-observation');
    await keep();
    await page.getByRole('row', { name: /^R2 Long-wave ultraviolet .* weak orange/ }).waitFor();
  });

  test('each finding is accepted, or set aside with a reason', async () => {
    const { page } = culet;
    await dropFiles(page, [infraredFile('cvd-as-grown', SEED)]);
    await sheet().getByText(/points, 4000 to 650 cm⁻¹/).waitFor();
    await sheet().getByRole('heading', { name: 'Infrared' }).waitFor();
    await keep();
    await page.getByRole('row', { name: /^R3 Infrared/ }).waitFor();
    await page.keyboard.press('j');
    await page.keyboard.press('x');
    await margin().getByRole('textbox', { name: 'Why is it set aside?' }).waitFor();
    await page.keyboard.press('Enter');
    await margin().getByText('Write why; the reason is kept and printed.').waitFor();
    await page.keyboard.press('Escape');
    for (let i = 0; i < 40 && await margin().getByText(/^\d+ to decide$/).count() > 0; i++) {
      const before = await margin().getByText(/^\d+ to decide$/).textContent();
      await page.keyboard.press('a');
      await page.waitForFunction((text) => document.querySelector('.margin-head .quiet')?.textContent !== text, before);
    }
    const neutral = margin().getByRole('listitem').filter({ hasText: 'no weight alone' }).first();
    await neutral.click();
    await page.keyboard.press('x');
    await margin().getByRole('textbox', { name: 'Why is it set aside?' }).fill('seen in every stone of this parcel');
    await page.keyboard.press('Enter');
    await margin().getByRole('button', { name: '1 set aside' }).click();
    await margin().getByText(/seen in every stone of this parcel/).waitFor();
    await takeView(culet, 'stone');
    expect.soft(await unnamedControls(page)).toEqual([]);
    await smallest('stone-small');
  });

  test('a departure from the rules needs its reason', async () => {
    const { page } = culet;
    await page.keyboard.press('Control+Enter');
    await sheet().getByRole('radiogroup', { name: 'Conclusion' }).waitFor();
    const proposed = await sheet().getByRole('radio', { checked: true }).textContent();
    expect(proposed).toContain('laboratory-grown diamond – CVD growth characteristics');
    await sheet().getByRole('radio', { name: /growth method not determined/ }).click();
    await page.keyboard.press('Control+Enter');
    await sheet().getByText(/write why you depart from it/).waitFor();
    await takeView(culet, 'conclude');
    await sheet().getByRole('radio', { name: /natural diamond/ }).click();
    await sheet().getByText(/Natural can’t be concluded/).waitFor();
    await sheet().getByRole('radio', { name: /CVD growth characteristics/ }).click();
    await keep();
    await page.getByText('Waits for a second person.').waitFor();
  });

  test('the same person can’t confirm, another can', async () => {
    const { page } = culet;
    await page.keyboard.press('Control+Enter');
    await sheet().getByText('You wrote this conclusion; a second person answers to it.').waitFor();
    await page.keyboard.press('Control+Enter');
    await sheet().getByText('A conclusion is confirmed by a second person, never by the one who wrote it.').waitFor();
    await takeView(culet, 'confirm-refused');
    await sheet().getByRole('button', { name: 'Someone else' }).click();
    await page.getByRole('button', { name: /Jonas Ferrari/ }).click();
    await givePassword(page);
    await page.getByRole('dialog', { name: 'Who works at this window?' }).waitFor({ state: 'detached' });
    await sheet().getByText('You answer as Jonas Ferrari.').waitFor();
    await keep();
    await page.getByText('Concluded and confirmed').waitFor();
    await page.getByText(/^Confirmed by Jonas Ferrari/).waitFor();
  });

  test('a disagreement stays in sight', async () => {
    const { page } = culet;
    await page.keyboard.press('Control+Enter');
    await sheet().getByRole('radiogroup', { name: 'Conclusion' }).waitFor();
    await keep();
    await page.getByText('Waits for a second person.').waitFor();
    await page.getByRole('button', { name: /Jonas Ferrari/ }).click();
    await page.getByRole('button', { name: /Mara Okafor-Lindqvist/ }).click();
    await givePassword(page);
    await sheet().waitFor({ state: 'detached' });
    await page.keyboard.press('Control+Enter');
    await sheet().getByRole('radio', { name: 'I do not agree' }).click();
    await page.keyboard.press('Control+Enter');
    await sheet().getByText('Write why you do not agree.').waitFor();
    await sheet().getByRole('textbox', { name: 'Why you do not agree' }).fill('the infrared run should be made again at 1 cm⁻¹');
    await keep();
    await page.getByText(/does not agree.*should be made again/).waitFor();
    await page.getByText('One earlier conclusion').click();
    await page.getByText(/^Confirmed by Jonas Ferrari/).waitFor();
    await takeView(culet, 'stone-disagreed');
  });
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { callDoor } from './steps/call-door.ts';
import { lookAt } from './steps/look-at.ts';
import { givePassword } from './steps/sign-in.ts';
import { makeHouse, type House } from './stone/make-house.ts';
import { openStone } from './stone/open-stone.ts';

const WORDS = 'concluded; shown after you have stated yours';
/** Words of the first conclusion that stand nowhere else. */
const FIRST = 'outside the scope';
const REASON = 'The colour is quillfeathered and was not looked at here.';

describe.each(availableHosts())('two readings in %s', (host) => {
  let culet: OpenCulet;
  let house: House;
  beforeAll(async () => {
    culet = await openCulet({ host });
    house = await makeHouse(culet);
    const { laboratory } = await callDoor(culet, 'casebook.status', {});
    const { name, address, zone, settings } = laboratory!;
    await callDoor(culet, 'laboratory.save', { name, address, zone, logo: null, settings: { ...settings, secondReadsFirst: true } });
    for (const label of ['A-1', 'B-1']) await callDoor(culet, 'conclusions.conclude', { stoneId: house.stones[label]!, conclusion: 'out-of-scope', reasons: REASON, departure: 'It is not colourless.' });
    await culet.page.reload();
  });
  afterAll(async () => {
    expect(culet.problems()).toEqual([]);
    await culet.close();
  });
  const sheet = () => culet.page.getByRole('dialog');
  const shown = () => culet.page.evaluate(() => document.body.innerText + [...document.querySelectorAll('[title], [aria-label]')].map((one) => `${one.getAttribute('title') ?? ''} ${one.getAttribute('aria-label') ?? ''}`).join(' '));
  const goTo = async (hash: string) => { await culet.page.evaluate((to) => { window.location.hash = to; }, hash); };

  test('the second person finds the first conclusion on no page', async () => {
    const { page } = culet;
    await openStone(culet, house.stones['A-1']!, 'A-1');
    expect((await shown()).toLowerCase()).toContain(FIRST); // Mara concluded, and sees it
    await page.getByRole('button', { name: /Mara Okafor-Lindqvist/ }).click();
    await page.getByRole('button', { name: /Jonas Ferrari/ }).click();
    await givePassword(page);
    await page.getByRole('dialog', { name: 'Who works at this window?' }).waitFor({ state: 'detached' });
    await page.getByText('Waits for a second person, who reads first').waitFor();
    for (const address of [`#/stone/${house.stones['A-1']!}`, '#/', '#/stones', '#/history', `#/case/${house.caseId}`]) {
      await goTo(address);
      await expect.poll(async () => (await shown()).toLowerCase()).toContain(WORDS);
      await page.waitForFunction(() => document.querySelector('.working') === null);
      const text = (await shown()).toLowerCase();
      // The filter of the history and the choice of a conclusion name every outcome there is.
      if (address !== '#/history') expect(text, address).not.toContain(FIRST);
      expect(text, address).not.toContain('quillfeathered');
    }
    await goTo('#/ledgers');
    await page.getByRole('heading', { level: 1, name: 'Ledgers' }).waitFor();
    expect(await shown()).not.toContain('quillfeathered');
    await goTo('#/');
    await page.getByRole('heading', { level: 1, name: 'Bench' }).waitFor();
    await lookAt(culet, 'reads-first-bench');
  });

  test('states one by keys, is shown the first, and answers to it', async () => {
    const { page } = culet;
    await openStone(culet, house.stones['A-1']!, 'A-1');
    await lookAt(culet, 'reads-first-stone');
    await page.keyboard.press('Control+Enter');
    await sheet().getByText('What you state is written down').waitFor();
    expect(await sheet().innerText()).not.toContain('quillfeathered');
    await page.keyboard.press('Control+Enter'); // nothing is chosen yet: nothing happens
    await sheet().getByLabel('Your own conclusion').selectOption('undetermined');
    await lookAt(culet, 'reads-first-sheet');
    await page.keyboard.press('Control+Enter');
    await sheet().getByText(REASON).waitFor();
    await sheet().getByText('It is another one: write why you do not agree.').waitFor();
    await lookAt(culet, 'reads-first-answer');
    await sheet().getByRole('textbox', { name: 'Why you do not agree' }).fill('it is colourless under the lamp');
    await page.keyboard.press('Control+Enter');
    await sheet().waitFor({ state: 'detached' });
    await page.getByText('Concluded, not agreed').waitFor();
    const { conclusions } = await callDoor(culet, 'stones.folder', { stoneId: house.stones['A-1']! });
    expect(conclusions[0]!.confirmation).toMatchObject({ outcome: 'undetermined', readFirst: true });
  });

  test('whoever knows it already says so, and confirms', async () => {
    const { page } = culet;
    await openStone(culet, house.stones['B-1']!, 'B-1');
    await page.keyboard.press('Control+Enter');
    await sheet().getByRole('button', { name: 'I know the first conclusion already' }).click();
    await sheet().getByText('Your answer then counts as confirmation').waitFor();
    await sheet().getByRole('button', { name: 'Show it' }).click();
    await sheet().getByText(REASON).waitFor();
    await page.keyboard.press('Control+Enter');
    await sheet().waitFor({ state: 'detached' });
    const { conclusions } = await callDoor(culet, 'stones.folder', { stoneId: house.stones['B-1']! });
    expect(conclusions[0]!.confirmation).toMatchObject({ agrees: true, readFirst: false });
  });
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import type { OpenCulet } from './harness/launch.ts';
import { beginCasebook } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { usualCase } from './steps/hand-overs.ts';
import { keptData } from './steps/kept-data.ts';
import { lookAt } from './steps/look-at.ts';
import { fileSavedBy } from './steps/save-file.ts';

const BASIS = 'bought as such from an invented grower whose name is rather long, with the number of its run and a paper that says so';

describe.each(availableHosts())('the history in %s', (host) => {
  const data = keptData(host);
  let culet: OpenCulet;
  beforeAll(async () => {
    culet = await data.open();
    await beginCasebook(culet);
    await callDoor(culet, 'cases.takeIn', usualCase('Marrow Lane Jewellers'));
    await callDoor(culet, 'cases.takeIn', usualCase('Saffron Row'));
  });
  afterAll(async () => { await data.remove(); });

  const goTo = async (hash: string) => { await culet.page.evaluate((to) => { window.location.hash = to; }, hash); };
  const rows = () => culet.page.getByRole('row');

  test('is narrowed by words and choices, and a stone is opened from it', async () => {
    await goTo('#/history');
    await culet.page.getByText(/stones in the casebook/).waitFor();
    await culet.page.getByRole('searchbox').fill('saffron');
    await culet.page.getByText(/stones? fits?$/).first().waitFor();
    await culet.page.getByLabel('Setting').selectOption('loose');
    await expect.poll(async () => rows().filter({ hasText: 'Marrow Lane' }).count()).toBe(0);
    await rows().filter({ hasText: 'Saffron Row' }).first().focus();
    await culet.page.keyboard.press('Enter');
    await expect.poll(() => culet.page.evaluate(() => window.location.hash)).toMatch(/^#\/stone\//);
    await goTo('#/history');
    await culet.page.getByRole('button', { name: 'Show all' }).click();
    await culet.page.getByRole('searchbox').fill('');
  });

  test('shows figures over time, each picture with its table, and saves them', async () => {
    await goTo('#/history/figures');
    const table = culet.page.getByRole('region', { name: 'Throughput and turnaround, table' });
    await expect.poll(async () => (await table.getByRole('row').last().innerText()).split(/\s+/).slice(0, 3)).toEqual(['whole', 'period', '2']);
    await expect.poll(() => culet.page.locator('.step-plot-surface svg').count(), { timeout: 30_000 }).toBeGreaterThan(0);
    await culet.page.getByText('No answer of this kind in the period. To measure it').waitFor();
    await lookAt(culet, 'history-figures');
    const saved = await fileSavedBy(culet, () => culet.page.getByRole('button', { name: 'Save as CSV' }).click());
    expect(saved.name).toBe('figures-over-time.csv');
    expect(Buffer.from(saved.bytes).toString('utf8').trim().split('\r\n').at(-1)).toMatch(/^whole period,[\d-]+,[\d-]+,,2,0,0,0,0,2,0,/);
    await culet.page.getByRole('group', { name: 'Period' }).getByLabel('From').fill('2036-01-01');
    await culet.page.getByText('The period ends before it begins.').waitFor();
    await culet.page.getByRole('button', { name: '12 months' }).click();
    await culet.page.getByText('The period ends before it begins.').waitFor({ state: 'detached' });
  });

  test('a check that gave a number is drawn', async () => {
    const instrument = await callDoor(culet, 'instruments.save', { id: null, name: 'Bench spectrometer', methods: ['photoluminescence'], serial: '', place: '', remembers: {}, checkEveryDays: 7, active: true });
    await goTo('#/instruments');
    await culet.page.getByRole('button', { name: /Record a check|Check/ }).first().click();
    const sheet = culet.page.getByRole('dialog');
    await sheet.getByLabel('Checked with').fill('mercury lamp');
    await sheet.getByLabel('What came out').fill('in place');
    await sheet.getByLabel('Value').fill('546,1x');
    await culet.page.keyboard.press('Control+Enter');
    await sheet.getByText('Write the number that was read.').waitFor();
    await sheet.getByLabel('Quantity').fill('mercury 546');
    await sheet.getByLabel('Value').fill('546,08');
    await sheet.getByLabel('Unit').fill('nm');
    await culet.page.keyboard.press('Control+Enter');
    await sheet.waitFor({ state: 'detached' });
    await goTo('#/history/figures');
    await culet.page.getByRole('heading', { name: 'Bench spectrometer: mercury 546' }).waitFor();
    await culet.page.getByText('No limits yet: they need at least 8 checks, and there is one.').waitFor();
    const check = (value: number, expected: number, afterService = false) => callDoor(culet, 'instruments.recordCheck', {
      instrumentId: instrument.id, passed: true, reference: 'mercury lamp', outcome: afterService ? 'grating cleaned and the entrance slit set anew by the maker' : 'in place', measured: { quantity: 'mercury 546', unit: 'nm', value, expected, tolerance: 0.1 }, afterService,
    });
    for (const value of [546.07, 546.09, 546.08, 546.06, 546.08, 546.07, 546.09, 546.08, 546.16]) await check(value, 546.07);
    await check(546.31, 546.3, true);
    for (const value of [546.29, 546.3, 546.31, 546.3, 546.29, 546.31, 546.3]) await check(value, 546.3);
    await culet.page.reload();
    await culet.page.getByText(/^After the service of .* \(grating cleaned .*\): mean 546\.301 nm, limits/).waitFor();
    await culet.page.getByText(/^Before the first service: mean 546\.0/).waitFor();
    const chart = culet.page.getByRole('region', { name: 'Instrument checks' });
    await expect.poll(() => chart.locator('.step-plot-surface svg .annotation-text').allTextContents(), { timeout: 30_000 }).toEqual([expect.stringContaining('after service')]);
    await chart.scrollIntoViewIfNeeded();
    await lookAt(culet, 'history-checks-after-service');
    expect((await callDoor(culet, 'instruments.list', {})).find((one) => one.id === instrument.id)?.lastCheck?.reference).toBe('mercury lamp');
  });

  test('a known sample is added and tried by keys, and the rates say how little one trial tells', async () => {
    await goTo('#/history/trials');
    await culet.page.getByRole('heading', { name: 'No known sample yet' }).waitFor();
    await lookAt(culet, 'history-trials-empty');
    await culet.page.getByRole('button', { name: 'New sample' }).click();
    const sheet = culet.page.getByRole('dialog');
    await sheet.getByLabel('Name on its box').fill('KS-1');
    await sheet.getByLabel('It is').selectOption('grown-cvd');
    await culet.page.keyboard.press('Control+Enter');
    await sheet.getByText('Write how its origin is known.').waitFor();
    await sheet.getByLabel('How its origin is known').fill(BASIS);
    await culet.page.keyboard.press('Control+Enter');
    await sheet.waitFor({ state: 'detached' });
    await culet.page.getByRole('heading', { name: 'What the trials say' }).waitFor();
    await culet.page.getByRole('heading', { name: 'Trials', exact: true }).click();
    await culet.page.keyboard.press('n');
    await sheet.getByLabel('Case').fill('C-2026-0001');
    await sheet.getByLabel('Stone').fill('A-1');
    await culet.page.keyboard.press('Control+Enter');
    await sheet.getByText(/^No second person has agreed|^There is no such stone/).first().waitFor();
    await sheet.getByRole('radio', { name: 'entered by hand' }).click();
    await culet.page.keyboard.press('Control+Enter');
    await sheet.getByText('Choose what it was said to be.').waitFor();
    await sheet.getByLabel('It was said to be').selectOption('grown-hpht');
    await sheet.getByLabel('Examiner', { exact: true }).selectOption({ index: 1 });
    await culet.page.keyboard.press('Control+Enter');
    await sheet.getByText(/You examined it yourself/).waitFor();
    await sheet.getByLabel('the examiner did not know').uncheck();
    await culet.page.keyboard.press('Control+Enter');
    await sheet.waitFor({ state: 'detached' });
    await culet.page.getByText('not natural: right, kind differs').waitFor();
    await culet.page.getByText(/No trial of this kind in the period/).waitFor(); // blind ones are the first that are shown
    await culet.page.getByRole('radio', { name: 'all trials' }).click();
    await expect.poll(() => culet.page.getByRole('region', { name: 'Rates, table' }).getByRole('row').nth(1).innerText()).toMatch(/0 of 1 \(0 %; 0 to 97 %\)/); // 1 − 0.025 for n = 1, by hand
    await lookAt(culet, 'history-trials');
  });

  test('the instruments of a trial are named; a mistaken one is taken back by keys and struck through', async () => {
    await culet.page.keyboard.press('n');
    const sheet = culet.page.getByRole('dialog');
    await sheet.getByRole('radio', { name: 'entered by hand' }).click();
    await sheet.getByLabel('It was said to be').selectOption('natural');
    await sheet.getByLabel('Examiner', { exact: true }).selectOption({ index: 1 });
    await sheet.getByLabel('the examiner did not know').uncheck();
    await sheet.getByLabel('Bench spectrometer').check();
    await lookAt(culet, 'history-trial-form');
    await culet.page.keyboard.press('Control+Enter');
    await sheet.waitFor({ state: 'detached' });
    const row = () => culet.page.getByRole('region', { name: 'Trials, table' }).getByRole('row').filter({ hasText: 'Bench spectrometer' });
    await row().getByRole('button', { name: /^Take back the trial of KS-1/ }).focus();
    await culet.page.keyboard.press('Enter');
    await culet.page.keyboard.press('Control+Enter');
    await sheet.getByText('Write why the trial is taken back.').waitFor();
    await sheet.getByLabel('Why').fill('entered for the wrong sample, whose name differs in one letter only');
    await culet.page.keyboard.press('Control+Enter');
    await sheet.waitFor({ state: 'detached' });
    await row().getByText(/^taken back .*: entered for the wrong sample/).waitFor();
    await expect.poll(() => culet.page.getByRole('region', { name: 'Rates, table' }).getByRole('row').nth(1).innerText()).toMatch(/0 of 1 /);
    await lookAt(culet, 'history-trials-taken-back');
    const saved = await fileSavedBy(culet, () => culet.page.getByRole('button', { name: 'Save the rates as CSV' }).click());
    expect(Buffer.from(saved.bytes).toString('utf8')).toMatch(/Missed among passed.*,0\.02\r\n/);
  });

  test('said nothing wrong on the way', () => {
    expect(culet.problems()).toEqual([]);
  });
});

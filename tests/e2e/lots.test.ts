import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { LOT_OUTCOMES } from '../../app/lots/lot-outcome.ts';
import { readPdf } from '../unit/main/print/read-pdf.ts';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { usualCase } from './steps/hand-overs.ts';

describe.each(availableHosts())('a lot in %s', (host) => {
  let culet: OpenCulet;
  let caseId: string;
  let itemId: string;
  let ring: string;
  beforeAll(async () => {
    culet = await openCulet({ host });
    await beginCasebook(culet);
    ({ caseId } = await callDoor(culet, 'cases.takeIn', usualCase('Harrow & Pell')));
    const items = (await callDoor(culet, 'cases.get', { caseId })).parcels.flatMap((parcel) => parcel.items);
    itemId = items.find((item) => item.kind === 'lot')!.id;
    ring = items.find((item) => item.kind === 'jewellery')!.id;
  });
  afterAll(async () => { await culet.close(); });

  const press = (...keys: string[]) => keys.reduce((before, key) => before.then(() => culet.page.keyboard.press(key)), Promise.resolve());
  const results = () => callDoor(culet, 'lots.results', { itemId });
  const says = () => culet.page.getByRole('region', { name: 'What the lot says' });
  const goTo = (hash: string) => culet.page.evaluate((to) => { window.location.hash = to; }, hash);

  test('is reached from its item by a key, and planned by typing', async () => {
    await goTo(`#/case/${caseId}`);
    await culet.page.getByRole('button', { name: /^C lot/ }).first().click();
    await culet.page.getByRole('button', { name: 'Open the lot' }).waitFor();
    await press('l');
    await culet.page.getByRole('heading', { level: 1, name: 'Lot C' }).waitFor();
    await culet.page.getByText('Test 54 of 340: if 5 % or more are laboratory-grown').waitFor();
    await culet.page.getByLabel('Why this plan').focus();
    await press('Control+Enter');
    await culet.page.getByText('Write why this plan was chosen').waitFor();
    await culet.page.keyboard.type('A first look at stock.');
    await press('Control+Enter');
    await culet.page.getByRole('heading', { name: 'The plan that holds' }).waitFor();
    expect((await callDoor(culet, 'lots.get', { itemId })).plan).toMatchObject({ content: { size: 54, reason: 'A first look at stock.' } });
  });

  test('takes thirty results by keys alone, with a correction and one taken back', async () => {
    await press('Alt+3');
    await culet.page.getByRole('listbox', { name: 'Results by stone' }).waitFor();
    const typed = 'nnnnncnnnnhnnnnunnnngnnnnxnnnn'.split('');
    expect(typed).toHaveLength(30);
    await press(...typed);
    await expect.poll(async () => (await results()).length).toBe(30);
    // The last becomes CVD, then is as it was.
    await press('ArrowUp', 'c');
    await expect.poll(async () => (await results()).at(-1)).toMatchObject({ outcome: 'grown-cvd', before: 'natural' });
    await press('z');
    await expect.poll(async () => (await results()).at(-1)).toMatchObject({ outcome: 'natural' });
    const counts = new Map(LOT_OUTCOMES.map((outcome) => [outcome, 0]));
    for (const { outcome } of await results()) counts.set(outcome, counts.get(outcome)! + 1);
    expect([...counts.values()].sort((a, b) => b - a)).toEqual([25, 1, 1, 1, 1, 1]);
    await says().getByText('Tested: 30 of 340 stones. 3 stones showed').waitFor();
    await says().getByText('24 of the 54 stones of the plan are still to be tested').waitFor();
  });

  test('the list in the window says who entered what, and a number goes to its stone', async () => {
    const last = (await results()).at(-1)!;
    await culet.page.getByRole('listbox').focus();
    await press('Home', ...String(last.number).split(''), 'Enter');
    const marked = culet.page.getByRole('option', { selected: true });
    await expect.poll(() => marked.innerText()).toContain(String(last.number));
    expect(await marked.innerText()).toContain('Ilse Marden');
  });

  test('a list is tried before it is kept: words are asked for, what does not fit is named', async () => {
    const { plan } = await callDoor(culet, 'lots.get', { itemId });
    expect(plan).not.toBeNull();
    const there = new Set((await results()).map((one) => one.number));
    const fresh = Array.from({ length: 340 }, (_, i) => i + 1).filter((number) => !there.has(number)).slice(0, 3);
    const [known] = await results();
    await culet.page.getByRole('button', { name: 'From a list' }).click();
    const sheet = culet.page.getByRole('dialog');
    await sheet.getByLabel('List of results').setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(`No;Outcome\n${known!.number};hpht\n${fresh[0]};natural\n${fresh[1]};natural\n${fresh[2]};odd\n999;natural\n`) });
    await sheet.getByText('1 number beyond the 340 stones of the lot: 999').waitFor();
    await sheet.getByText('1 stone stands otherwise in the lot').waitFor();
    await expect.poll(() => sheet.getByRole('button', { name: /^Enter 2 results/ }).isDisabled()).toBe(true);
    await sheet.getByLabel('“odd”, 1 row').selectOption({ label: 'undetermined, referred' });
    await sheet.getByRole('button', { name: /^Enter 3 results/ }).waitFor();
    await press('Control+Enter');
    await sheet.waitFor({ state: 'detached' });
    await expect.poll(async () => (await results()).length).toBe(33);
    expect((await results()).find((one) => one.number === known!.number)!.outcome).toBe(known!.outcome);
    await culet.page.getByRole('region', { name: 'What does not fit' }).getByText('not in the drawn list').waitFor();
  });

  test('parts must add up to the lot', async () => {
    await press('Alt+4');
    const first = culet.page.getByRole('group', { name: 'Part 1' });
    await first.getByLabel('Stones').fill('1');
    await culet.page.getByText(/stones missing\. Count again/).waitFor();
  });

  test('a mounted stone gets an estimate with its error, and the piece its total', async () => {
    await goTo(`#/case/${caseId}`);
    await culet.page.getByRole('button', { name: /^B jewellery/ }).first().click();
    await culet.page.getByRole('button', { name: 'Edit' }).first().click();
    const sheet = culet.page.getByRole('dialog');
    const estimate = sheet.getByRole('region', { name: 'Estimated weight' });
    for (const [label, value] of [['Length', '6.50'], ['Width', '6,50'], ['Depth', '3.95']] as const) await estimate.getByLabel(label, { exact: true }).fill(value);
    await estimate.getByText('1.018 ct ± 0.057 ct').waitFor();
    await estimate.getByRole('button', { name: 'Keep estimate' }).click();
    await expect.poll(async () => (await callDoor(culet, 'weights.ofItem', { itemId: ring })).stones[0]!.estimate?.weight).toBe(10_180);
    await press('Escape');
    await culet.page.getByText('5 stones have no estimate').waitFor();
  });

  test('the draft of the report says how the sample was drawn and what follows', async () => {
    const { pdf } = await callDoor(culet, 'reports.preview', { caseId });
    const text = (await readPdf(pdf)).pages.join(' ').replaceAll(/\s+/g, ' ');
    expect(text).toContain('Lots of small stones');
    expect(text).toContain('drawn by a list of random numbers');
    expect(text).toContain('Tested: 33 of 340 stones.');
    expect(text).toContain('are still to be tested: these limits are provisional');
    expect(text).toContain('Estimated weights of mounted stones');
  });
});

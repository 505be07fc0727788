import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WIRE_TYPE } from '../../app/contract/wire.ts';
import { readPdf, squeezed } from '../unit/main/print/read-pdf.ts';
import { availableHosts } from './harness/hosts.ts';
import type { OpenCulet } from './harness/launch.ts';
import { beginCasebook, LABORATORY } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { focusedName, tabTo, typeInto } from './steps/keyboard.ts';
import { keptData, workAs } from './steps/kept-data.ts';
import { lookAt } from './steps/look-at.ts';
import { fileSavedBy } from './steps/save-file.ts';
import { typeIntake } from './steps/type-intake.ts';

const DAY_MS = 86_400_000;

describe.each(availableHosts())('taking in a case in %s', (host) => {
  const data = keptData(host);
  let culet: OpenCulet;
  let number = '';
  beforeAll(async () => {
    culet = await data.open();
    await beginCasebook(culet);
  });
  afterAll(() => data.remove());
  const heading = (name: string | RegExp) => culet.page.getByRole('heading', { level: 1, name });

  test('needs no mouse: one sheet, one client, three kinds of item', async () => {
    await heading('Bench').waitFor();
    await culet.page.keyboard.press('n');
    await heading('Take in a case').waitFor();
    await expect.poll(() => focusedName(culet.page)).toBe('Client');
    await typeIntake(culet.page, 'Thistledown Insurance');
    await lookAt(culet, 'intake-filled');
    await culet.page.keyboard.press('Control+Enter');
    await heading(/^C-\d{4}-\d{4}$/).waitFor();
    await lookAt(culet, 'intake-taken-in');
    number = await heading(/^C-/).innerText();
  });

  test('keeps every word and every figure as typed', async () => {
    const { rows } = await callDoor(culet, 'cases.list', {});
    const [row] = rows;
    const view = await callDoor(culet, 'cases.get', { caseId: row!.id });
    const [loose, ring, lot] = view.parcels[0]!.items;
    const inWeek = new Intl.DateTimeFormat('sv-SE', { timeZone: LABORATORY.zone }).format(new Date(Date.parse(view.receivedAt) + 7 * DAY_MS));
    expect({ number: view.number, client: view.client.name, email: view.client.email, due: view.dueOn, by: view.createdBy, seal: view.parcels[0]!.sealNumber })
      .toEqual({ number, client: 'Thistledown Insurance', email: 'claims@invented.example', due: inWeek, by: LABORATORY.person, seal: '20931' });
    expect([loose!.grossWeight, loose!.weightUnit, loose!.stones[0]!.shape, loose!.condition]).toEqual([10_234, 'ct', 'round brilliant', 'nothing noticed']);
    expect([ring!.grossWeight, ring!.weightUnit, ring!.setting]).toEqual([421_300, 'g', 'closed-back']);
    expect(ring!.stones.map((s) => `${s.label} ${s.position}`)).toEqual(['B-1 centre', 'B-2 left 1', 'B-3 left 2', 'B-4 left 3', 'B-5 right 1', 'B-6 right 2']);
    expect([lot!.grossWeight, lot!.count]).toEqual([17_500, 340]);
    expect([loose!.custody.place, loose!.custody.seal]).toEqual(['safe, tray 2', '20931']);
  });

  test('prints the receipt and the labels, each by its key', async () => {
    const receipt = await fileSavedBy(culet, () => culet.page.keyboard.press('r'));
    expect(receipt.name).toBe(`Receipt ${number}.pdf`);
    expect(Buffer.from(receipt.bytes.subarray(0, 5)).toString('latin1')).toBe('%PDF-');
    const pages = (await readPdf(receipt.bytes)).pages.join(' ');
    for (const part of [number, 'Thistledown Insurance', '20931', '1.0234', 'ring, white gold', '340']) expect(squeezed(pages)).toContain(squeezed(part));
    const labels = await fileSavedBy(culet, () => culet.page.keyboard.press('l'));
    const items = squeezed((await readPdf(labels.bytes)).pages.join(' '));
    for (const letter of ['A', 'B', 'C']) expect(items).toMatch(new RegExp(`${number}[/-]?${letter}`));
  });

  test('opens the case with Enter', async () => {
    await culet.page.keyboard.press('Enter');
    await heading(/Thistledown Insurance/).waitFor();
  });

  test('says beside each field what is wrong and puts the cursor into the first', async () => {
    await culet.page.keyboard.press('n');
    await heading('Take in a case').waitFor();
    await typeInto(culet.page, 'Gross weight', '1.02345 ct');
    await culet.page.keyboard.press('Control+Enter');
    const sheet = culet.page.locator('.intake-sheet');
    for (const sentence of ['Choose a client of the list or write a new client’s name.', 'Write where the items are put now.', 'Write what the client says it is.', 'Give at most 4 decimals of carat; a balance that shows more must be rounded by a person.']) {
      await sheet.getByText(sentence).waitFor();
    }
    await expect.poll(() => focusedName(culet.page)).toBe('Client');
  });

  test('takes a sentence away when its field is put right, and checks the rest in the casebook', async () => {
    await culet.page.keyboard.type('Marrow Lane');
    await culet.page.locator('.intake-sheet').getByText('Choose a client of the list').waitFor({ state: 'detached' });
    await culet.page.getByLabel('Put where').fill('bench 2');
    await culet.page.getByRole('textbox', { name: 'Declared as' }).fill('round stone');
    await culet.page.getByRole('textbox', { name: 'Gross weight' }).fill('1.0234');
    await culet.page.getByLabel('Due').fill('2001-02-03');
    await culet.page.keyboard.press('Control+Enter');
    await culet.page.locator('.intake-sheet').getByText('The due date lies before today.').waitFor();
    await expect.poll(() => focusedName(culet.page)).toBe('Due');
  });

  // In its own window the program cannot fall silent and leave the page standing.
  test.skipIf(host !== 'loopback')('says that the sheet is not kept while the program does not answer, and keeps it once it does', async () => {
    const silent = JSON.stringify({ ok: false, error: { code: 'busy', message: 'The program behind this page does not answer.', next: '' } });
    await culet.page.route('**/call/drafts.put', (route) => route.fulfill({ status: 200, contentType: WIRE_TYPE, body: silent }));
    await culet.page.getByLabel('Put where').fill('bench 2, left');
    await culet.page.getByText('Not kept: the program does not answer').waitFor();
    await culet.page.unroute('**/call/drafts.put');
    await culet.page.getByText('Kept as you type').waitFor();
    expect((await callDoor(culet, 'drafts.get', { key: 'intake' })).content).toMatchObject({ place: 'bench 2, left' });
    await culet.page.getByLabel('Put where').fill('bench 2');
  });

  test('keeps a half-filled sheet when the program is closed at once', async () => {
    await culet.page.getByRole('textbox', { name: 'Brought by' }).fill('a courier in haste');
    // Ending the browser would leave the page no chance; a person closes its tab or leaves it, and ends the program after that:
    // the page's last word is on its way for a moment, and nothing on this side can see it arrive.
    if (host === 'loopback') {
      await culet.page.goto('about:blank');
      await culet.page.waitForTimeout(2_000);
    }
    culet = await data.open();
    await workAs(culet, LABORATORY.person);
    await culet.page.getByText('A half-filled intake').waitFor();
    await culet.page.getByRole('link', { name: 'Go on with it' }).click();
    await heading('Take in a case').waitFor();
    const kept = (label: string) => culet.page.getByLabel(label).inputValue();
    expect([await kept('Brought by'), await kept('Put where'), await kept('Gross weight')]).toEqual(['a courier in haste', 'bench 2', '1.0234']);
    expect(await culet.page.getByRole('combobox', { name: 'Client' }).inputValue()).toBe('Marrow Lane');
  });

  test('clears the sheet only when asked twice', async () => {
    await culet.page.getByRole('button', { name: 'Clear' }).click();
    await culet.page.getByRole('alertdialog', { name: 'Clear the sheet?' }).getByRole('button', { name: 'Keep it' }).click();
    expect(await culet.page.getByRole('textbox', { name: 'Brought by' }).inputValue()).toBe('a courier in haste');
    await culet.page.getByRole('button', { name: 'Clear' }).click();
    await culet.page.getByRole('button', { name: 'Clear it' }).click();
    await expect.poll(() => culet.page.getByRole('textbox', { name: 'Brought by' }).inputValue()).toBe('');
    expect((await callDoor(culet, 'drafts.get', { key: 'intake' })).content).toBeNull();
  });

  test('finds a client who was here before by typing, and keeps one client for both cases', async () => {
    await culet.page.getByRole('combobox', { name: 'Client' }).click();
    await culet.page.keyboard.type('thistle');
    await culet.page.getByRole('option', { name: /Thistledown Insurance/ }).waitFor();
    await culet.page.keyboard.press('ArrowDown');
    await culet.page.keyboard.press('Enter');
    await culet.page.locator('.client-chosen').getByText('Thistledown Insurance').waitFor();
    await culet.page.getByLabel('Put where').fill('bench 2');
    await culet.page.getByRole('textbox', { name: 'Declared as' }).fill('round stone');
    await tabTo(culet.page, 'Gross weight');
    await culet.page.keyboard.press('Control+Enter');
    await heading(/^C-\d{4}-\d{4}$/).waitFor();
    expect(Number((await heading(/^C-/).innerText()).slice(-4))).toBe(Number(number.slice(-4)) + 1);
    const found = await callDoor(culet, 'clients.search', { text: 'thistle' });
    expect(found.map((client) => [client.name, client.cases])).toEqual([['Thistledown Insurance', 2]]);
  });

  test('said nothing wrong on the way', () => {
    expect(culet.problems()).toEqual([]);
  });
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook, LABORATORY } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { usualCase } from './steps/hand-overs.ts';
import { focusedName } from './steps/keyboard.ts';
import { makePng } from './steps/make-png.ts';
import { fileSavedBy } from './steps/save-file.ts';

describe.each(availableHosts())('a case in %s', (host) => {
  let culet: OpenCulet;
  let caseId: string;
  beforeAll(async () => {
    culet = await openCulet({ host });
    await beginCasebook(culet);
    ({ caseId } = await callDoor(culet, 'cases.takeIn', usualCase('Marrow Lane Jewellers')));
    await culet.page.evaluate((hash) => { window.location.hash = hash; }, `#/case/${caseId}`);
    await culet.page.getByRole('heading', { level: 1, name: /Marrow Lane Jewellers/ }).waitFor();
    await culet.page.getByRole('navigation', { name: 'This case' }).getByRole('button', { name: /^A loose/ }).click();
  });
  afterAll(async () => { await culet.close(); });

  const sheet = () => culet.page.getByRole('dialog');
  const note = (text: string | RegExp) => culet.page.locator('.note').filter({ hasText: text });
  const hasFact = (name: string, text: string) => culet.page.locator('.facts > div').filter({ hasText: name }).getByText(text, { exact: true }).waitFor();
  /** One entry of the ledger, written with the keyboard after its button was pressed. */
  async function write(button: string, lines: Readonly<Record<string, string>>): Promise<void> {
    await culet.page.getByRole('group', { name: 'Custody' }).getByRole('button', { name: button, exact: true }).click();
    for (const [label, text] of Object.entries(lines)) await sheet().getByLabel(label, { exact: true }).fill(text);
    await culet.page.keyboard.press('Control+Enter');
    // What changes hands offers its form first.
    if (button === 'Hand over' || button === 'Return') await sheet().getByRole('button', { name: 'Done' }).click();
    await sheet().waitFor({ state: 'detached' });
  }
  const show = (what: RegExp) => culet.page.getByRole('radio', { name: what }).click();

  test('says nothing of a weight within the tolerance', async () => {
    await write('Weigh', { Weight: '1.0230' });
    await note('weighed · 1.023 ct').waitFor();
    expect(await culet.page.locator('.note-bad').count()).toBe(0);
  });

  test('warns when a weight differs from the one before, in the note, on the item and on the bench', async () => {
    await write('Weigh', { Weight: '1,0190', Remark: 'balance 1' });
    await note('differs from 1.023 ct').filter({ hasText: 'Weigh again' }).waitFor();
    await culet.page.getByText('A weight of this item differs by more than the tolerance from the one before it, or from the first').waitFor();
    expect((await callDoor(culet, 'bench.today', {})).house).toMatchObject({ weightsCompared: 2, weightsAgree: 1 });
    await note('Weigh again').getByRole('button', { name: 'Dismiss' }).click();
  });

  test('goes on warning while it is lighter than what came in, though it agrees with the weighing before', async () => {
    await write('Weigh', { Weight: '1.0195' });
    await note('weighed · 1.0195 ct · differs from 1.0234 ct').waitFor();
    await note('Weigh again').getByRole('button', { name: 'Dismiss' }).click();
  });

  test('will not write down a weight that is none, or an entry without what it needs', async () => {
    await culet.page.getByRole('group', { name: 'Custody' }).getByRole('button', { name: 'Weigh' }).click();
    await culet.page.keyboard.press('Control+Enter');
    await sheet().getByText('Write what the balance shows.').waitFor();
    await expect.poll(() => focusedName(culet.page)).toBe('Weight');
    await sheet().getByRole('textbox', { name: 'Weight' }).fill('about one');
    await culet.page.keyboard.press('Control+Enter');
    await sheet().getByText(/“about one” is not a weight in carat/).waitFor();
    // What was typed is not let go by one key: Escape asks, and once more stays.
    const asked = culet.page.getByRole('alertdialog', { name: 'Leave without keeping?' });
    await culet.page.keyboard.press('Escape');
    await asked.waitFor();
    await culet.page.keyboard.press('Escape');
    await asked.waitFor({ state: 'detached' });
    expect(await sheet().getByRole('textbox', { name: 'Weight' }).inputValue()).toBe('about one');
    await culet.page.keyboard.press('Escape');
    await asked.getByRole('button', { name: 'Leave', exact: true }).click();
    await sheet().waitFor({ state: 'detached' });
    await expect.poll(() => focusedName(culet.page)).toMatch(/^Weigh/);
    // Nothing typed, nothing asked.
    await culet.page.getByRole('group', { name: 'Custody' }).getByRole('button', { name: 'Weigh' }).click();
    await sheet().waitFor();
    await culet.page.keyboard.press('Escape');
    await sheet().waitFor({ state: 'detached' });
    expect(await asked.count()).toBe(0);
  });

  test('keeps a photograph byte for byte', async () => {
    const picture = makePng(96, 64);
    await show(/^photographs/);
    await culet.page.getByText('No photograph yet').waitFor();
    await culet.page.locator('.photographs input[type=file]').setInputFiles({ name: 'long wave.png', mimeType: 'image/png', buffer: Buffer.from(picture) });
    await culet.page.getByRole('button', { name: 'Open long wave.png' }).click();
    await sheet().getByRole('img', { name: 'long wave.png' }).waitFor();
    await sheet().getByText(`${picture.byteLength.toLocaleString('en')} bytes`).waitFor();
    const saved = await fileSavedBy(culet, () => sheet().getByRole('button', { name: 'Save as it came' }).click());
    expect(saved.name).toBe('long wave.png');
    expect(Buffer.from(saved.bytes).equals(Buffer.from(picture))).toBe(true);
    await culet.page.keyboard.press('Escape');
  });

  test('names a file that is no picture, and keeps nothing of it', async () => {
    await culet.page.locator('.photographs input[type=file]').setInputFiles({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('not a picture') });
    await note('notes.txt is not a PNG, JPEG or TIFF picture.').waitFor();
    const broken = { name: 'broken.png', mimeType: 'image/png', buffer: Buffer.from('a text that calls itself a picture') };
    await culet.page.locator('.photographs input[type=file]').setInputFiles(broken);
    await note('This file is not the PNG, JPEG or TIFF picture it says it is.').or(note('Some entries need another look.')).first().waitFor();
    expect((await callDoor(culet, 'cases.get', { caseId })).parcels[0]!.items[0]!.photographs).toHaveLength(1);
  });

  test('writes down every hand the item passes through', async () => {
    await write('Open', {});
    await write('Seal', { 'Seal number': '30777' });
    await write('Move', { 'Where to': 'safe, tray 9' });
    await write('Hand over', { From: LABORATORY.person, To: 'Wainscot, courier' });
    await hasFact('In whose hands', 'Wainscot, courier');
    await write('Return', { To: 'Marrow Lane Jewellers', Weight: '1.0195' });
    await show(/^custody$/);
    const table = culet.page.getByRole('table', { name: 'Custody' });
    await table.getByText('returned to client from Wainscot, courier to Marrow Lane Jewellers · 1.0195 ct').waitFor();
    const written = await table.getByRole('row').allInnerTexts();
    const events = written.slice(1).map((row) => /(received|weighed|sealed|opened|photographed|moved|handed over|returned)/.exec(row)?.[1]).reverse();
    expect(events).toEqual(['received', 'weighed', 'sealed', 'weighed', 'weighed', 'weighed', 'photographed', 'opened', 'sealed', 'moved', 'handed over', 'returned']);
    expect(written.join('\n')).toContain('moved to safe, tray 9');
    await culet.page.getByText('Returned to the client: its custody is closed.').waitFor();
    expect(await culet.page.getByRole('group', { name: 'Custody' }).count()).toBe(0);
  });

  test('is amended, and the audit ledger keeps who did', async () => {
    await culet.page.keyboard.press('e');
    await sheet().getByRole('textbox', { name: 'Remarks' }).fill('the client telephoned: no hurry');
    await culet.page.keyboard.press('Control+Enter');
    await sheet().waitFor({ state: 'detached' });
    const { rows } = await callDoor(culet, 'audit.list', { caseId });
    expect([rows[0]!.operation, rows[0]!.person]).toEqual(['cases.amend', LABORATORY.person]);
  });

  test('gives a draft of its report, marked as one, and will not issue it while stones are open', async () => {
    await culet.page.getByText('A-1 has no conclusion yet.').waitFor();
    expect(await culet.page.getByRole('button', { name: 'Issue the report' }).isDisabled()).toBe(true);
    const draft = await fileSavedBy(culet, () => culet.page.keyboard.press('d'));
    expect(Buffer.from(draft.bytes.subarray(0, 5)).toString('latin1')).toBe('%PDF-');
  });

  test('packs everything of it into one file', async () => {
    const bundle = await fileSavedBy(culet, () => culet.page.getByRole('button', { name: 'Bundle' }).click());
    expect(bundle.name).toMatch(/\.zip$/);
    expect(Buffer.from(bundle.bytes.subarray(0, 4)).toString('latin1')).toBe('PK\u0003\u0004');
  });

  test('said nothing wrong on the way', () => {
    expect(culet.problems()).toEqual([]);
  });
});

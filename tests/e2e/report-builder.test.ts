import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readPdf } from '../unit/main/print/read-pdf.ts';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { usualCase } from './steps/hand-overs.ts';
import { focusedName, tabTo, typeInto } from './steps/keyboard.ts';
import { lookAt, visit } from './steps/look-at.ts';
import { fileSavedBy } from './steps/save-file.ts';
import { addPerson, PASSWORD } from './steps/sign-in.ts';

/** The pages are drawn by a machine that has other work as well. */
const DRAWING = { timeout: 60_000 };

/** One stone seen, concluded and confirmed by a second person. */
async function confirmStone(culet: OpenCulet, stoneId: string): Promise<void> {
  const { me } = await callDoor(culet, 'casebook.status', {});
  const second = await addPerson(culet, { name: 'Odo Lanner', initials: 'OL', roles: ['second-examiner'] });
  await callDoor(culet, 'findings.add', { stoneId, method: 'microscopy', statement: 'A crystal under the table.', strength: 'neutral', supports: 'none', caution: '' });
  const { id } = await callDoor(culet, 'conclusions.conclude', { stoneId, conclusion: 'undetermined', reasons: 'The findings do not suffice.', departure: '' });
  await callDoor(culet, 'people.signIn', { personId: second, password: PASSWORD });
  await callDoor(culet, 'conclusions.confirm', { conclusionId: id, agrees: true, reason: '' });
  await callDoor(culet, 'people.signIn', { personId: me!.id, password: PASSWORD });
}

describe.each(availableHosts())('building a report in %s', (host) => {
  let culet: OpenCulet;
  let stoneId: string;
  const press = (key: string) => culet.page.keyboard.press(key);
  const margin = () => culet.page.getByRole('region', { name: 'Completeness' });
  const pages = () => culet.page.getByRole('region', { name: 'Pages of the draft' });
  /** Until the pages show what stands at the left. */
  const drawn = () => culet.page.locator('.preview-line').getByText('as they would be printed').waitFor(DRAWING);
  const issueByKeys = async () => {
    await drawn();
    await press('Control+Enter');
    const sheet = culet.page.getByRole('alertdialog', { name: 'Issue the report?' });
    await sheet.waitFor();
    await press('Control+Enter');
    await sheet.waitFor({ state: 'detached' }).catch(async () => { throw new Error(await sheet.innerText()); });
    await culet.page.getByRole('heading', { level: 1, name: 'Reports' }).waitFor();
  };
  const reportRows = () => culet.page.getByRole('table', { name: 'Reports' }).getByRole('row');

  beforeAll(async () => {
    culet = await openCulet({ host });
    await beginCasebook(culet);
    const { caseId } = await callDoor(culet, 'cases.takeIn', usualCase('Genuine & Daughters (invented)'));
    stoneId = (await callDoor(culet, 'cases.get', { caseId })).parcels[0]!.items[0]!.stones[0]!.id;
  });
  afterAll(async () => { await culet.close(); });

  test('is begun from the stone with keys, and its pages are shown as they would be printed', async () => {
    await visit(culet, `#/stone/${stoneId}`, 'Stone A-1');
    await press('r');
    await culet.page.getByRole('dialog', { name: 'New report' }).getByRole('combobox', { name: 'What is reported' }).waitFor();
    await press('Control+Enter');
    await culet.page.getByRole('heading', { level: 1, name: 'Report on A-1' }).waitFor();
    await drawn();
    expect(await pages().getByRole('img').count()).toBeGreaterThan(0);
    // Paper with ink on it: a page that was not drawn is of one colour.
    const shades = await pages().getByRole('img').first().evaluate((canvas: HTMLCanvasElement) => new Set(canvas.getContext('2d')!.getImageData(0, 0, canvas.width, Math.floor(canvas.height / 3)).data).size);
    expect(shades).toBeGreaterThan(20);
  });

  test('names what is missing with its clause, and refuses to be issued in words', async () => {
    await margin().getByText('A-1 has no conclusion yet.').waitFor();
    await margin().getByText('7.8.7', { exact: true }).waitFor();
    await press('Control+Enter');
    await culet.page.getByText('It can’t be issued yet:', { exact: false }).waitFor();
    expect(await culet.page.getByRole('alertdialog').count()).toBe(0);
    await lookAt(culet, 'report-builder-open');
    // What was said of this draft must not stand over another report.
    const draft = await culet.page.evaluate(() => window.location.hash);
    await visit(culet, '#/reports', 'Reports');
    expect(await culet.page.getByText('It can’t be issued yet:', { exact: false }).count()).toBe(0);
    expect(await culet.page.getByRole('table', { name: 'Drafts' }).getByRole('row').nth(1).textContent()).toContain('A-1');
    await visit(culet, draft, 'Report on A-1');
    await drawn();
  });

  test('a section is left out and put back, and moved, with keys', async () => {
    await tabTo(culet.page, 'Opinions and interpretations');
    for (let steps = 0; steps < 20 && await focusedName(culet.page) !== 'Signatures'; steps += 1) await press('ArrowDown');
    await press('Space');
    expect(await focusedName(culet.page)).toBe('Signatures, left out');
    await margin().getByText('“Signatures” is left out', { exact: false }).waitFor(DRAWING);
    await press('Space');
    await margin().getByText('“Signatures” is left out', { exact: false }).waitFor({ state: 'detached', ...DRAWING });
    const order = () => culet.page.getByRole('grid', { name: /^Sections/ }).getByRole('row').evaluateAll((rows) => rows.map((one) => one.getAttribute('data-key')));
    const before = await order();
    await press('Alt+ArrowUp');
    await culet.page.waitForFunction((was) => [...document.querySelectorAll('.section-list [role=row]')].map((one) => one.getAttribute('data-key')).join() !== was, before.join());
    expect((await order()).indexOf('signatures')).toBe(before.indexOf('signatures') - 1);
    expect(await focusedName(culet.page)).toBe('Signatures');
    await culet.page.getByRole('status').getByText(/^Signatures is number \d+ of \d+\.$/).waitFor();
    await press('Alt+ArrowDown');
    await expect.poll(order).toEqual(before);
  });

  test('a section is dragged by its handle, and with Enter on the handle', async () => {
    const grid = culet.page.getByRole('grid', { name: /^Sections/ });
    const order = () => grid.getByRole('row').evaluateAll((rows) => rows.map((one) => one.getAttribute('data-key')));
    const before = await order();
    const from = (await grid.getByRole('row', { name: 'Signatures' }).locator('.section-handle').boundingBox())!;
    const to = (await grid.getByRole('row').first().boundingBox())!;
    await culet.page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await culet.page.mouse.down();
    await culet.page.mouse.move(to.x + 60, to.y + 12, { steps: 8 });
    await culet.page.mouse.move(to.x + 60, to.y + 3, { steps: 3 });
    await culet.page.mouse.up();
    await expect.poll(async () => (await order())[0]).toBe('signatures');
    await culet.page.getByRole('status').getByText(/^Signatures is number 1 of/).waitFor();
    // By keys: Enter on the handle takes it up, arrows go from gap to gap, Enter puts it down, and a reader is told.
    await grid.getByRole('row', { name: 'Signatures' }).focus();
    await press('ArrowRight');
    await press('Enter');
    await culet.page.locator('[role=log], [aria-live]').getByText(/Started dragging/).waitFor({ state: 'attached' });
    await press('End');
    await press('Enter');
    await expect.poll(async () => (await order()).at(-1)).toBe('signatures');
    for (let at = before.length - 1; at > before.indexOf('signatures'); at -= 1) {
      await press('Alt+ArrowUp');
      await expect.poll(async () => (await order()).indexOf('signatures')).toBe(at - 1);
    }
    await expect.poll(order).toEqual(before);
  });

  test('words that should not stand in it are pointed out beside the field, with whose rule it is', async () => {
    await typeInto(culet.page, 'Remarks', 'A genuine stone.');
    const notes = culet.page.getByRole('list', { name: 'Words to look at again' });
    await notes.getByText('genuine').waitFor(DRAWING);
    expect(await notes.textContent()).toContain('ISO 18323:2015');
    await lookAt(culet, 'report-builder-words');
    await press('Control+a');
    await culet.page.keyboard.type('Seen with the client.');
    await notes.waitFor({ state: 'detached', ...DRAWING });
  });

  test('is kept: the draft is in the list, and reads the same when it is opened again', async () => {
    await drawn();
    await visit(culet, '#/reports', 'Reports');
    await culet.page.getByRole('table', { name: 'Drafts' }).getByRole('row').nth(1).focus();
    await press('Enter');
    expect(await culet.page.getByRole('textbox', { name: 'Remarks' }).inputValue()).toBe('Seen with the client.');
    await drawn();
  });

  test('is issued once nothing is missing, and prints what was written', async () => {
    await confirmStone(culet, stoneId);
    await culet.page.reload();
    await margin().getByText('Nothing is missing').waitFor(DRAWING);
    await lookAt(culet, 'report-builder-complete');
    await issueByKeys();
    await reportRows().nth(1).getByText('S-', { exact: false }).waitFor();
    const saved = await fileSavedBy(culet, () => culet.page.getByRole('button', { name: 'Save PDF' }).click());
    expect((await readPdf(saved.bytes)).pages.join(' ')).toContain('Seen with the client.');
  });

  test('is amended with a reason, which the new revision names, and the one before no longer counts', async () => {
    await tabTo(culet.page, /^Amend /);
    await press('Enter');
    await culet.page.getByRole('heading', { level: 1, name: /, revision 2/ }).waitFor();
    await margin().getByText('Write why the report is amended.').waitFor(DRAWING);
    await typeInto(culet.page, /^Why revision 1/, 'A remark was forgotten.');
    await typeInto(culet.page, 'Remarks', ' The girdle is bruted.');
    await culet.page.getByRole('region', { name: 'What differs' }).getByText('Remarks', { exact: false }).waitFor(DRAWING);
    await margin().getByText('Nothing is missing').waitFor(DRAWING);
    await lookAt(culet, 'report-builder-amend');
    await typeInto(culet.page, 'Remarks', ' Sold as genuine.');
    await culet.page.getByRole('list', { name: 'Words to look at again' }).first().waitFor(DRAWING);
    await drawn();
    await press('Control+Enter');
    const sheet = culet.page.getByRole('alertdialog', { name: 'Issue the report?' });
    await sheet.getByText('ISO 18323:2015', { exact: false }).waitFor();
    await press('Control+Enter');
    await sheet.getByText('Write the reason; without one the report is not issued.').waitFor();
    await lookAt(culet, 'report-builder-words');
    await typeInto(culet.page, 'Why it is to stand', 'Quoted from the bill of sale.');
    await press('Control+Enter');
    await culet.page.getByRole('heading', { level: 1, name: 'Reports' }).waitFor();
    await reportRows().nth(2).getByText('superseded').waitFor();
    expect(await reportRows().nth(1).textContent()).toContain('issued');
  });

  test('is withdrawn with a reason; both revisions stay in the list', async () => {
    await tabTo(culet.page, /^Withdraw /);
    await press('Enter');
    await typeInto(culet.page, 'Why it is withdrawn', 'The wrong stone lay in the paper.');
    await tabTo(culet.page, 'Withdraw it');
    await press('Enter');
    await reportRows().nth(1).getByText('withdrawn').waitFor(DRAWING);
    expect(await reportRows().count()).toBe(3);
    await lookAt(culet, 'reports-revisions');
    // The page of the case says so in words, with the reason.
    await reportRows().nth(1).focus();
    await press('Enter');
    const reports = culet.page.getByRole('list', { name: 'Reports of this case' });
    await reports.getByText(/^withdrawn .* by Ilse Marden: The wrong stone lay in the paper\.$/).waitFor();
    await reports.getByText(/^replaced by a later revision/).waitFor();
    await lookAt(culet, 'case-reports');
  });

  test('said nothing wrong on the way', () => {
    expect(culet.problems()).toEqual([]);
  });
});

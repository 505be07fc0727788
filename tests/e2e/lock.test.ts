import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook, LABORATORY } from './steps/begin-casebook.ts';
import { askDoor, callDoor } from './steps/call-door.ts';
import { takeView } from './harness/take-view.ts';
import { givePassword, PASSWORD } from './steps/sign-in.ts';
import { movableClock } from './steps/move-clock.ts';

const IDLE_MS = 11 * 60_000;

describe.each(availableHosts())('the lock in %s', (host) => {
  const folder = mkdtempSync(join(tmpdir(), 'culet-clock-'));
  const clock = movableClock(folder);
  let culet: OpenCulet;
  beforeAll(async () => {
    culet = await openCulet({ host, env: host === 'loopback' ? clock.env : {} });
    await clock.enter(culet);
    await beginCasebook(culet);
  });
  afterAll(async () => {
    await culet.close();
    rmSync(folder, { recursive: true });
  });
  const lock = () => culet.page.getByRole('dialog', { name: 'This window is locked' });

  test('a window that nobody touched answers nothing any more, and hides what stood on it', async () => {
    const { page } = culet;
    await page.getByRole('link', { name: /^Cases/ }).click();
    await page.getByRole('heading', { level: 1, name: 'Cases' }).waitFor();
    await page.keyboard.press('n');
    await page.getByRole('textbox', { name: 'The client asks' }).fill('natural or grown, half typed');
    clock.forward(IDLE_MS);
    expect(await askDoor(culet, 'cases.list', {})).toMatchObject({ ok: false, error: { code: 'locked' } });
    expect(await askDoor(culet, 'people.stay', {})).toMatchObject({ ok: false, error: { code: 'locked' } });
    await page.keyboard.type(' and typed on');
    await lock().waitFor();
    await expect.poll(() => page.getByRole('navigation', { name: 'Rooms' }).isVisible()).toBe(false);
    await takeView(culet, 'locked');
  });

  test('a wrong password leaves it locked and says so', async () => {
    await culet.page.getByLabel('Password or one-time code').fill(`${PASSWORD}?`);
    await culet.page.keyboard.press('Enter');
    await lock().getByText('The name and the password do not belong together.').waitFor();
    expect(await askDoor(culet, 'cases.list', {})).toMatchObject({ ok: false, error: { code: 'locked' } });
  });

  test('the right one brings back what was being typed', async () => {
    const { page } = culet;
    await givePassword(page);
    await lock().waitFor({ state: 'detached' });
    expect(await page.getByRole('textbox', { name: 'The client asks' }).inputValue()).toBe('natural or grown, half typed and typed on');
    expect(await callDoor(culet, 'cases.list', {})).toMatchObject({ total: 0 });
  });

  test('Alt L locks at once', async () => {
    const { page } = culet;
    await page.getByRole('link', { name: /^Bench/ }).click();
    await page.getByRole('heading', { level: 1, name: 'Bench' }).waitFor();
    await page.keyboard.press('Alt+l');
    await lock().waitFor();
    await lock().getByText(LABORATORY.person).waitFor();
    await givePassword(page);
    await page.getByRole('heading', { level: 1, name: 'Bench' }).waitFor();
  });

  test('Alt L locks over a half-filled sheet and where a case is taken in, and both are there again', async () => {
    const { page } = culet;
    await page.keyboard.press('n');
    const asks = page.getByRole('textbox', { name: 'The client asks' });
    await asks.fill('is it grown?');
    await page.keyboard.press('Alt+l');
    await lock().waitFor();
    await givePassword(page);
    expect(await asks.inputValue()).toBe('is it grown?');
    await page.getByRole('link', { name: /^Instruments/ }).click();
    await page.getByRole('heading', { level: 1, name: 'Instruments' }).waitFor();
    await page.keyboard.press('a');
    const name = page.getByRole('dialog', { name: 'A new instrument' }).getByRole('textbox').first();
    await name.fill('green laser, half entered');
    await page.keyboard.press('Alt+l');
    await lock().waitFor();
    expect(await name.isVisible()).toBe(false);
    await givePassword(page);
    expect(await name.inputValue()).toBe('green laser, half entered');
    // Typing goes on where it was.
    await page.keyboard.type('!');
    expect(await name.inputValue()).toBe('green laser, half entered!');
    expect(culet.problems()).toEqual([]);
  });
});

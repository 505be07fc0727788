import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { BACKEND_WORDS } from '../../app/domain/key-closing.ts';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook, LABORATORY } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { lookAt } from './steps/look-at.ts';
import { givePassword } from './steps/sign-in.ts';

/** The machine's own key store is used only where the run says so: a test must not ask a person's Keychain by itself. On Linux: `gnome-libsecret` and so on. */
const STORE = process.env['CULET_TEST_PASSWORD_STORE'] ?? '';

describe.each(availableHosts())('the system’s key store in %s', (host) => {
  const dataDir = mkdtempSync(join(tmpdir(), 'culet-store-'));
  const start = (args: readonly string[]) => openCulet({ host, dataDir, args: host === 'electron' ? args : [] });
  const own = STORE === '' ? ['--password-store=basic'] : [`--password-store=${STORE}`];
  let culet: OpenCulet;
  let sheet = '';
  beforeAll(async () => {
    culet = await start(own);
    await beginCasebook(culet);
  });
  afterAll(async () => {
    await culet.close();
    rmSync(dataDir, { recursive: true, force: true, maxRetries: 5 });
  });
  const section = () => culet.page.getByRole('region', { name: 'The laboratory’s key' });
  async function house(): Promise<void> {
    await culet.page.getByRole('link', { name: 'House', exact: true }).click();
    await section().waitFor();
  }
  async function startAgain(args: readonly string[]): Promise<void> {
    await culet.close();
    culet = await start(args);
    await culet.page.getByText(LABORATORY.name).first().waitFor();
    await givePassword(culet.page);
  }
  const closing = async () => (await callDoor(culet, 'keys.list', {})).closing;

  test('is used where one is offered, and House says what keeps the key', async () => {
    await house();
    const now = await closing();
    console.log(`${host}: ${now.offered === null ? `no key store, ${now.why}` : `key store ${now.offered}`}`);
    if (now.offered === null) {
      expect(now).toMatchObject({ closedBy: 'password', store: null });
      await section().getByText(`The private part is kept by the passwords only: ${now.why}.`).waitFor();
      expect(await section().getByRole('button', { name: 'Use the key store' }).count()).toBe(0);
    } else {
      expect(now).toMatchObject({ closedBy: 'store', store: now.offered, opensHere: true, sheet: true });
      await section().getByText(`The private part is kept by the system’s key store (${BACKEND_WORDS[now.offered]})`, { exact: false }).waitFor();
    }
    if (host === 'electron' && STORE !== '') expect(now.offered).not.toBeNull();
    if (host === 'loopback') expect(now.why).toContain('browser');
    await lookAt(culet, `house-key-${now.closedBy}`);
  });

  test.runIf(host === 'electron' && STORE !== '')('opens the key at the next start, and a manager may decide against it', async () => {
    await startAgain(own);
    await house();
    expect((await callDoor(culet, 'keys.list', {})).open).toBe(true);
    await section().getByRole('button', { name: 'Use the passwords only' }).click();
    const dialog = culet.page.getByRole('dialog', { name: 'Use the passwords only' });
    await culet.page.keyboard.press('Control+Enter');
    await dialog.getByText('Write why this is decided.').waitFor();
    await dialog.getByRole('textbox', { name: 'Why' }).fill('two computers sign with it');
    await culet.page.keyboard.press('Control+Enter');
    await section().getByText('a manager decided not to use', { exact: false }).waitFor();
    expect(await closing()).toMatchObject({ wanted: false, closedBy: 'password' });
    await lookAt(culet, 'house-key-decided');
    await section().getByRole('button', { name: 'Use the key store' }).click();
    await culet.page.getByRole('dialog').getByRole('textbox', { name: 'Why' }).fill('one computer again');
    await culet.page.keyboard.press('Control+Enter');
    await expect.poll(async () => (await closing()).closedBy).toBe('store');
  });

  test.runIf(host === 'electron' && STORE !== '')('without the store that closed it the password signs in, and the sheet opens the key', async () => {
    const { recovery } = await callDoor(culet, 'people.newRecovery', {});
    await startAgain(['--password-store=basic']);
    await culet.page.getByText('which can’t be used here', { exact: false }).first().waitFor();
    await house();
    await section().getByText('Passwords do not open it here', { exact: false }).waitFor();
    await lookAt(culet, 'house-key-elsewhere');
    await section().getByRole('button', { name: 'Open with the recovery sheet' }).click();
    const dialog = culet.page.getByRole('dialog', { name: 'Open the key with the recovery sheet' });
    await dialog.getByRole('textbox', { name: 'Code on the recovery sheet' }).fill(recovery.replace(/.$/, (last) => (last === '0' ? '1' : '0')));
    await culet.page.keyboard.press('Control+Enter');
    await dialog.getByText('This is not what stands on the recovery sheet.').waitFor();
    await lookAt(culet, 'house-key-sheet');
    await dialog.getByRole('textbox', { name: 'Code on the recovery sheet' }).fill(recovery);
    await culet.page.keyboard.press('Control+Enter');
    sheet = await culet.page.getByRole('dialog', { name: 'The recovery sheet' }).locator('.recovery-code').innerText();
    expect(sheet).not.toBe(recovery);
    await culet.page.getByRole('button', { name: 'It is put away' }).click();
    expect(await callDoor(culet, 'keys.list', {})).toMatchObject({ open: true, closing: { closedBy: 'password' } });
    // Back with the store: it takes over by itself, and says so.
    await startAgain(own);
    await culet.page.getByText('from now on', { exact: false }).first().waitFor();
    expect(await callDoor(culet, 'keys.list', {})).toMatchObject({ open: true, closing: { closedBy: 'store' } });
    expect(await callDoor(culet, 'ledgers.verify', {})).toMatchObject({ sound: true });
  });
});

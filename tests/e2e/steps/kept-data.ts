import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Host } from '../harness/hosts.ts';
import { callDoor } from './call-door.ts';
import { givePassword } from './sign-in.ts';
import { openCulet, type OpenCulet } from '../harness/launch.ts';

/** A data folder that outlives the program, for tests that close it and open it again. */
export function keptData(host: Host) {
  const dataDir = mkdtempSync(join(tmpdir(), 'culet-e2e-'));
  let culet: OpenCulet | null = null;
  return {
    dataDir,
    /** Closes what is open on this data and opens it again. */
    async open(): Promise<OpenCulet> {
      await culet?.close();
      culet = await openCulet({ host, dataDir });
      return culet;
    },
    async close(): Promise<void> {
      await culet?.close();
      culet = null;
    },
    async remove(): Promise<void> {
      await culet?.close();
      culet = null;
      rmSync(dataDir, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** Signs in at a window that was opened again; in the demonstration a name is enough. */
export async function workAs(culet: Pick<OpenCulet, 'page'>, name: string): Promise<void> {
  const { page } = culet;
  const { laboratory, people } = await callDoor(culet, 'casebook.status', {});
  if (laboratory?.isDemonstration === true) {
    const choice = page.getByRole('dialog', { name: 'Who works at this window?' });
    await choice.getByRole('button', { name: new RegExp(name) }).click();
    await choice.waitFor({ state: 'detached' });
    return;
  }
  // One person alone is asked for the password at once.
  const names = page.getByRole('dialog').or(page.locator('.sign-in-sheet')).getByRole('button', { name: new RegExp(name) });
  if (people.length > 1) await names.first().click();
  await givePassword(page);
  await page.getByRole('navigation', { name: 'Rooms' }).waitFor();
}

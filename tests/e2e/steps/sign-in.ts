import type { Page } from 'playwright-core';
import type { OpenCulet } from '../harness/launch.ts';
import { callDoor } from './call-door.ts';

/** The invented password of every invented person in the tests. */
export const PASSWORD = 'quartz lamp drawer seven';

/** Gives the password of the name that was chosen. */
export async function givePassword(page: Page): Promise<void> {
  await page.getByLabel('Password or one-time code').fill(PASSWORD);
  await page.keyboard.press('Enter');
  await page.getByLabel('Password or one-time code').waitFor({ state: 'detached' });
}

/** A person with the password of the tests; afterwards the person before is at the window again. Gives the new one's id. */
export async function addPerson(culet: Pick<OpenCulet, 'page'>, person: { readonly name: string; readonly initials: string; readonly roles: ('intake' | 'examiner' | 'second-examiner' | 'appraiser' | 'manager')[] }): Promise<string> {
  const { me } = await callDoor(culet, 'casebook.status', {});
  const { id, code } = await callDoor(culet, 'people.save', { id: null, ...person, active: true });
  await callDoor(culet, 'people.choosePassword', { personId: id, code: code!, password: PASSWORD });
  await callDoor(culet, 'people.signIn', { personId: me!.id, password: PASSWORD });
  return id;
}

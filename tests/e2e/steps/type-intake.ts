import type { Page } from 'playwright-core';
import { tabTo, typeInto } from './keyboard.ts';

/** Types one hand-over on the open sheet without touching a mouse: a loose stone, a ring with six stones, a lot. */
export async function typeIntake(page: Page, client: string): Promise<void> {
  const key = (chord: string) => page.keyboard.press(chord);
  await typeInto(page, 'Client', client);
  await typeInto(page, 'Address', '1 Long Lane, Invented Town');
  await typeInto(page, 'E-mail', 'claims@invented.example');
  await typeInto(page, 'Telephone', '+49 30 0000000');
  await tabTo(page, '+7');
  await key('Enter');
  await typeInto(page, 'Put where', 'safe, tray 2');
  await typeInto(page, 'Brought by', 'the client');
  await typeInto(page, 'Seal number', '20931');
  await typeInto(page, 'Declared as', 'diamond, round, about 1 ct');
  await typeInto(page, 'Declared value', 'EUR 2,400');
  await typeInto(page, 'Gross weight', '1,0234');
  await typeInto(page, 'Shape and cut', 'round brilliant');
  await typeInto(page, 'Condition, as received', 'nothing noticed');
  await key('Alt+j');
  await typeInto(page, 'Declared as', 'ring, white gold, centre stone and five shoulders');
  await typeInto(page, 'Gross weight', '4,213');
  await tabTo(page, 'Setting');
  // From “choose” over the open back to the closed one.
  await key('ArrowDown');
  await key('ArrowDown');
  await typeInto(page, 'Stone 1: where it sits', 'centre');
  await tabTo(page, 'Add 5');
  await key('Enter');
  for (const [n, place] of ['left 1', 'left 2', 'left 3', 'right 1', 'right 2'].entries()) await typeInto(page, `Stone ${n + 2}: where it sits`, place);
  await key('Alt+o');
  await typeInto(page, 'Declared as', 'small stones, 0.9 to 1.1 mm');
  await typeInto(page, 'Gross weight', '1,75');
  await typeInto(page, 'Stones counted', '340');
}

import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { NOTHING_REMEMBERED, readRemembered, writeRemembered } from '../../../../main/casebook/remembered.ts';
import { temporaryFolder } from '../../db/made-casebook.ts';

test('what is written is read again', () => {
  const file = join(temporaryFolder(), 'state.json');
  expect(readRemembered(file)).toEqual(NOTHING_REMEMBERED);
  writeRemembered(file, { open: 'own', ownKnown: true }, 'a');
  expect(readRemembered(file)).toEqual({ open: 'own', ownKnown: true });
});
test.each(['', '{', '{"open":"other"}', 'null'])('%j is kept aside and counts as nothing', (text) => {
  const file = join(temporaryFolder(), 'state.json');
  writeFileSync(file, text);
  expect(readRemembered(file)).toEqual(NOTHING_REMEMBERED);
  expect(existsSync(`${file}.unreadable`)).toBe(true);
});

import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { openCasebook } from '../../../db/open-casebook.ts';
import { intake, madeCasebook, temporaryFolder } from './made-casebook.ts';

test('a copy of an open casebook holds the newest rows and is one sound file', async () => {
  const { casebook, deps, personId, options } = await madeCasebook();
  for (let i = 0; i < 20; i++) await casebook.cases.takeIn({ at: deps.now().toISOString(), personId, operation: 'cases.takeIn' }, intake());
  const target = join(temporaryFolder(), 'copy.culet');
  const made = await casebook.backup(target);
  expect(made).toMatchObject({ ok: true, value: { file: target } });
  expect(readdirSync(dirname(target))).toEqual(['copy.culet']);
  const copy = openCasebook({ ...options, file: target });
  if (!copy.ok) throw new Error(copy.error.message);
  expect((await copy.value.cases.list({ text: '', state: 'all', limit: 100, offset: 0 })).total).toBe(20);
  expect(copy.value.guardsRestored).toEqual([]);
  expect((await copy.value.ledgers.verify({ at: 'now' }))!.sound).toBe(true);
  copy.value.close();
  casebook.close();
});

test('a copy that can’t be written leaves what was there before', async () => {
  const { casebook } = await madeCasebook();
  const folder = temporaryFolder();
  const target = join(folder, 'kept.culet');
  writeFileSync(target, 'an older backup');
  mkdirSync(`${target}.part`); // in the way of the temporary file
  writeFileSync(join(`${target}.part`, 'x'), '');
  expect((await casebook.backup(target)).ok).toBe(false);
  expect(readFileSync(target, 'utf8')).toBe('an older backup');
  expect(await casebook.backup(join(folder, 'no', 'folder.culet'))).toMatchObject({ ok: false, error: { code: 'cannot-write' } });
  expect(existsSync(join(folder, 'no'))).toBe(false);
  casebook.close();
});

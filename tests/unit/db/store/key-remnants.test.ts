import { readFileSync } from 'node:fs';
import { randomBytes } from 'node:crypto';
import { expect, test } from 'vitest';
import type { Wrap } from '../../../../db/store/key-wraps.ts';
import { madeCasebook } from '../made-casebook.ts';

const hex = (bytes: number) => randomBytes(bytes).toString('hex');

test('what a copy of the key held before it was closed anew is not left in the file', async () => {
  const { casebook, file, deps, personId } = await madeCasebook();
  const change = { at: deps.now().toISOString(), personId, operation: 'keys.share' };
  const key = { id: '0123456789abcdef', publicKey: hex(32), reason: '' };
  const wraps: Wrap[] = Array.from({ length: 40 }, (_one, i) => ({ id: `${key.id}/${i}`, keyId: key.id, sealedTo: hex(32), sender: hex(32), sealed: hex(48), store: null }));
  await casebook.keys.create(change, key, wraps);
  // As long as what key stores give back, so that rows move within and between pages; one after the other as people come.
  for (const wrap of wraps) await casebook.keys.putWraps(change, [{ ...wrap, sealed: hex(96), store: 'libsecret' }]);
  const now = await casebook.keys.wraps(key.id);
  casebook.close();
  const bytes = readFileSync(file);
  expect(wraps.filter((wrap) => bytes.includes(Buffer.from(wrap.sealed)))).toEqual([]);
  expect(now.filter((wrap) => bytes.includes(Buffer.from(wrap.sealed)))).toHaveLength(40);
});

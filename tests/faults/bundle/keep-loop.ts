// Keeps one large invented bundle after another until it is killed: prints “begun ID” before and “kept ID” after each, and a line for each piece.
import { createHash, randomBytes } from 'node:crypto';
import { writeSync } from 'node:fs';
import { resolve } from 'node:path';
import { v7 } from 'uuid';
import { openCasebook } from '../../../db/open-casebook.ts';
import { inventedBundle } from './invented-bundle.ts';

const opened = openCasebook({ file: process.argv[2]!, mustExist: true, migrationsFolder: resolve(import.meta.dirname, '../../../db/migrations'), now: () => new Date(), newId: () => v7() });
if (!opened.ok) throw new Error(opened.error.message);
const { people, sealedBundles } = opened.value;
const [person] = await people.list();
for (;;) {
  const bytes = randomBytes(3 * 1024 * 1024 + 5);
  const id = createHash('sha256').update(bytes).digest('hex');
  writeSync(1, `begun ${id}\n`);
  const kept = await sealedBundles.keep({ at: new Date().toISOString(), personId: person!.id, operation: 'bundles.takeIn' }, inventedBundle(id, bytes.byteLength), {
    read: (at, length) => bytes.subarray(at, at + length),
    pace(done) {
      writeSync(1, `piece ${done}\n`);
      return Promise.resolve(true);
    },
  });
  if (!kept.ok) throw new Error(kept.error.message);
  writeSync(1, `kept ${id}\n`);
}

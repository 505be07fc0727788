// Takes in one case after another until it is killed, and prints each number once it is told that the case is kept.
import { writeSync } from 'node:fs';
import { resolve } from 'node:path';
import { v7 } from 'uuid';
import { openCasebook } from '../../../db/open-casebook.ts';
import { intake, looseItem, ringItem } from '../../unit/db/intake-samples.ts';

const opened = openCasebook({ file: process.argv[2]!, mustExist: true, migrationsFolder: resolve(import.meta.dirname, '../../../db/migrations'), now: () => new Date(), newId: () => v7() });
if (!opened.ok) throw new Error(opened.error.message);
const { cases, people } = opened.value;
const [person] = await people.list();
for (;;) {
  const taken = await cases.takeIn({ at: new Date().toISOString(), personId: person!.id, operation: 'cases.takeIn' }, intake([looseItem(), ringItem()]));
  if (!taken.ok) throw new Error(taken.error.message);
  writeSync(1, `${taken.value.number}\n`);
}

// Puts the copies of the key into a key store and takes them out again until it is killed, and prints each decision once it is told that it is kept.
import { writeSync } from 'node:fs';
import { resolve } from 'node:path';
import { v7 } from 'uuid';
import { openCasebook } from '../../../db/open-casebook.ts';
import { copiesDue } from '../../../main/keys/share-key.ts';
import { openKeyring, storeInFile } from './key-house.ts';

const opened = openCasebook({ file: process.argv[2]!, mustExist: true, migrationsFolder: resolve(import.meta.dirname, '../../../db/migrations'), now: () => new Date(), newId: () => v7() });
if (!opened.ok) throw new Error(opened.error.message);
const casebook = opened.value;
const key = (await casebook.keys.current())!;
const keyring = openKeyring(casebook, key.id, storeInFile(process.argv[3]!));
const [person] = await casebook.people.list();
for (;;) {
  const used = !await casebook.keys.storeIsWanted();
  await casebook.keys.chooseStore({ at: new Date().toISOString(), personId: person!.id, operation: 'keys.useStore' }, { used, reason: 'invented' }, await copiesDue(casebook, keyring, { closing: used ? 'store' : 'password' }));
  writeSync(1, `${used ? 'used' : 'not used'}\n`);
}

import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { keyIdOf } from '../../../app/signature/fingerprint.ts';
import { err } from '../../../app/result.ts';
import { openCasebook } from '../../../db/open-casebook.ts';
import { RECOVERY } from '../../../db/store/credentials.ts';
import { publicKeyOf } from '../../../main/keys/ed25519.ts';
import { copiesDue, shareKey } from '../../../main/keys/share-key.ts';
import { noSystemStore, type SystemStore } from '../../../main/keys/system-store.ts';
import { madeCasebook, temporaryFolder } from '../../unit/db/made-casebook.ts';
import { copiesOf, credentialOf, openKeyring, SEED, storeInFile } from './key-house.ts';
import { runUntilKilled } from './run-until-killed.ts';
import { seeded } from './seeded.ts';

const LOOP = join(import.meta.dirname, 'close-key-in-loop.ts');
const ROUNDS = 4;
/** Long enough for several decisions, so that some round is killed amid one. */
const MOST_MS = 500;
const MESSAGE = new TextEncoder().encode('what is signed');

/** A casebook whose key three persons and the recovery sheet open, by `store` as well. */
async function withKey(store: SystemStore) {
  const made = await madeCasebook();
  const { casebook, personId } = made;
  const at = made.deps.now().toISOString();
  const change = { at, personId, operation: 'keys.share' };
  const ids = [personId];
  for (const name of ['Ben Invented', 'Cleo Invented']) {
    const saved = await casebook.people.save(change, { id: null, name, initials: name.slice(0, 2), roles: ['appraiser'], active: true });
    if (!saved.ok) throw new Error(saved.error.message);
    ids.push(saved.value.id);
  }
  await casebook.people.save(change, { id: personId, name: 'Ada Invented', initials: 'AI', roles: ['manager'], active: true });
  const publicKey = publicKeyOf(SEED);
  const keyId = keyIdOf(publicKey);
  await casebook.keys.create(change, { id: keyId, publicKey: Buffer.from(publicKey).toString('hex'), reason: '' }, []);
  await casebook.credentials.set(change, { credentials: [...ids, RECOVERY].map(credentialOf), wraps: [], subject: personId, content: {} });
  const keyring = openKeyring(casebook, keyId, store);
  await shareKey(casebook, keyring, change);
  return { ...made, keyId, ids, change, keyring };
}

/** Kills the loop some milliseconds after its first decision; returns the decisions it vouched for. */
const closeUntilKilled = async (file: string, storeFile: string, afterMs: number): Promise<string[]> => (await runUntilKilled({ args: [LOOP, file, storeFile], afterMs })).filter((line) => line.endsWith('used'));

describe('the system’s key store', () => {
  test('killed while copies are closed and opened again: all copies open, and are as the newest decision says', async () => {
    const storeFile = join(temporaryFolder(), 'store');
    const store = storeInFile(storeFile);
    const { casebook, file, options, ids } = await withKey(store);
    casebook.close();
    const random = seeded(20260302);
    let vouched = 0;
    for (let round = 0; round < ROUNDS; round++) {
      const decided = await closeUntilKilled(file, storeFile, Math.floor(random() * MOST_MS));
      vouched += decided.length;
      const opened = openCasebook(options);
      if (!opened.ok) throw new Error(opened.error.message);
      const used = await opened.value.keys.storeIsWanted();
      const { n } = opened.value.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM key_store_choice')!;
      expect(n).toBeGreaterThanOrEqual(vouched);
      vouched = n;
      expect(await copiesOf(opened.value, store)).toEqual({
        ...Object.fromEntries(ids.map((id) => [id, { store: used ? 'libsecret' : null, opens: true }])), [RECOVERY]: { store: null, opens: true },
      });
      const verified = await opened.value.ledgers.verify({ at: options.now().toISOString() });
      expect(verified!.parts.filter((part) => !part.sound)).toEqual([]);
      opened.value.close();
    }
    expect(vouched).toBeGreaterThanOrEqual(ROUNDS);
  }, 180_000);

  test('a change that is undone half way leaves every copy as it was, and opening', async () => {
    const store = storeInFile(join(temporaryFolder(), 'store'));
    const { casebook, keyring, change } = await withKey(store);
    const before = await copiesOf(casebook, store);
    const wraps = await copiesDue(casebook, keyring, { closing: 'password' });
    expect(wraps).toHaveLength(3);
    await expect(casebook.keys.chooseStore({ ...change, personId: 'nobody' }, { used: false, reason: 'invented' }, wraps)).rejects.toThrow(/FOREIGN KEY/);
    expect(await copiesOf(casebook, store)).toEqual(before);
    expect(await casebook.keys.storeIsWanted()).toBe(true);
    casebook.close();
  });

  test('a store that stops taking after the first copy leaves the others to the passwords; nobody is kept out', async () => {
    const whole = storeInFile(join(temporaryFolder(), 'store'));
    let left = 1;
    const failing: SystemStore = { ...whole, seal: (content) => (left-- > 0 ? whole.seal(content) : err({ code: 'refused', message: 'denied' })) };
    const { casebook, ids, change, keyId } = await withKey(failing);
    expect(await copiesOf(casebook, whole)).toEqual({
      [ids[0]!]: { store: 'libsecret', opens: true }, [ids[1]!]: { store: null, opens: true }, [ids[2]!]: { store: null, opens: true }, [RECOVERY]: { store: null, opens: true },
    });
    // At the next sign-in it takes them.
    await shareKey(casebook, openKeyring(casebook, keyId, whole), change);
    expect(Object.values(await copiesOf(casebook, whole)).filter((one) => one.store === null)).toHaveLength(1);
    casebook.close();
  });

  test('a store that loses its key while somebody is signed in: the key signs on, and the next change closes the copies anew', async () => {
    const storeFile = join(temporaryFolder(), 'store');
    const store = storeInFile(storeFile);
    const { casebook, ids, change, keyring, keyId } = await withKey(store);
    rmSync(storeFile);
    expect(Object.values(await copiesOf(casebook, store)).filter((one) => one.opens)).toHaveLength(1);
    expect(await keyring.closedElsewhere()).toBeNull();
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: true });
    await shareKey(casebook, keyring, change);
    expect(await copiesOf(casebook, store)).toMatchObject(Object.fromEntries(ids.map((id) => [id, { store: 'libsecret', opens: true }])));
    // Lost again with nobody there: no password opens it, and the sentence says what does; the sheet's copy opens.
    rmSync(storeFile);
    keyring.forget();
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: false, error: { code: 'locked', message: expect.stringContaining('or this one has lost it') as string, next: expect.stringContaining('recovery sheet') as string } });
    expect((await copiesOf(casebook, noSystemStore('gone')))[RECOVERY]).toEqual({ store: null, opens: true });
    // A program without the store that changes people meanwhile takes nothing away of what the store may still open.
    const bare = openKeyring(casebook, keyId, noSystemStore('gone'));
    expect(await copiesDue(casebook, bare)).toEqual([]);
    casebook.close();
  });

  test('a copy whose store was altered by hand does not open, and is named', async () => {
    const store = storeInFile(join(temporaryFolder(), 'store'));
    const { casebook, options, ids } = await withKey(store);
    casebook.handle.transactNow((tx) => {
      tx.run(`UPDATE key_wrap SET store = NULL WHERE id LIKE '%' || ?`, [ids[0]!]);
      tx.written.forget();
    });
    expect((await copiesOf(casebook, store))[ids[0]!]).toEqual({ store: null, opens: false });
    const verified = await casebook.ledgers.verify({ at: options.now().toISOString() });
    expect(JSON.stringify(verified!.parts)).toContain('closed copy of the laboratory’s key');
    expect(verified!.sound).toBe(false);
    casebook.close();
  });
});

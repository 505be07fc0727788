import type { Change } from '../../db/change.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import type { NewCredential } from '../../db/store/credentials.ts';
import type { Wrap } from '../../db/store/keys.ts';
import type { Keyring } from './keyring.ts';
import { wrapsDue } from './wraps-due.ts';

/** Closed copies that are due now, with `changed` credentials in the place of those that are stored. None while the key is locked. */
export async function copiesDue(casebook: Casebook, keyring: Pick<Keyring, 'seedOf'>, changed: readonly NewCredential[] = []): Promise<Wrap[]> {
  const key = await casebook.keys.current();
  const seed = key === null ? null : await keyring.seedOf(key.id);
  if (key === null || seed === null) return [];
  const credentials = new Map([...await casebook.credentials.list(), ...changed].map((one) => [one.id, one]));
  return wrapsDue(key.id, seed, await casebook.people.list(), [...credentials.values()], await casebook.keys.wraps(key.id));
}

/** After a change of people or roles: lets exactly those who may sign open the key. */
export async function shareKey(casebook: Casebook, keyring: Pick<Keyring, 'seedOf'>, change: Change): Promise<void> {
  await casebook.keys.putWraps(change, await copiesDue(casebook, keyring));
}

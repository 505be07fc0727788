import type { Change } from '../../db/change.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import type { NewCredential } from '../../db/store/credentials.ts';
import type { Wrap } from '../../db/store/key-wraps.ts';
import { closingNow, othersDue, type Closing } from './closing.ts';
import type { Keyring } from './keyring.ts';
import { wrapsDue } from './wraps-due.ts';

type Opened = Pick<Keyring, 'seedOf' | 'store'>;

export type Due = {
  /** Credentials that are set in the same transaction, in the place of those that are stored. */
  readonly changed?: readonly NewCredential[];
  /** How the copies are to be closed, where that is not what holds now. `here`: as it holds, and so that passwords open the key at this window. */
  readonly closing?: 'store' | 'password' | 'here';
};

/** Closed copies that are due now. None while the key is locked. */
export async function copiesDue(casebook: Casebook, keyring: Opened, { changed = [], closing: how }: Due = {}): Promise<Wrap[]> {
  const key = await casebook.keys.current();
  const seed = key === null ? null : await keyring.seedOf(key.id);
  if (key === null || seed === null) return [];
  const credentials = new Map([...await casebook.credentials.list(), ...changed].map((one) => [one.id, one]));
  const closing = closingAs(how, await closingNow(casebook, keyring.store, credentials.values()));
  return [
    ...wrapsDue(key.id, seed, await casebook.people.list(), [...credentials.values()], await casebook.keys.wraps(key.id), closing),
    ...othersDue(await casebook.keys.wrapsOfOthers(key.id), closing),
  ];
}

function closingAs(how: Due['closing'], now: Closing): Closing {
  const { store } = now;
  if (how === 'password' || (how === 'here' && now.how === 'leave')) return { how: 'password', store };
  const state = store.state();
  return how === 'store' && state.available ? { how, backend: state.backend, store } : now;
}

/** After a change of people or roles, and at each sign-in: lets exactly those who may sign open the key. Says what was written. */
export async function shareKey(casebook: Casebook, keyring: Opened, change: Change): Promise<readonly Wrap[]> {
  const due = await copiesDue(casebook, keyring);
  await casebook.keys.putWraps(change, due);
  return due;
}

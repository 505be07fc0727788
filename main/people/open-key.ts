import type { PersonView } from '../../app/contract/casebook.ts';
import { maySign } from '../../app/domain/role.ts';
import type { Change } from '../../db/change.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { openWrap } from '../keys/closing.ts';
import type { Keyring } from '../keys/keyring.ts';
import { newKey } from '../keys/new-key.ts';
import { wrapId } from '../keys/wraps-due.ts';
import type { Session } from '../services/service.ts';

/**
 * Opens the laboratory's key for a session whose person may sign, with what their password (or the recovery sheet) opens.
 * A casebook from before there were keys gets one when a manager comes. Nothing happens where there is no copy for them yet.
 */
export async function openKey(casebook: Casebook, keyring: Keyring, session: Session, person: PersonView, opened: { readonly credentialId: string; readonly privatePart: Uint8Array }, change: Change): Promise<void> {
  if (!maySign(person)) return;
  const key = await casebook.keys.current();
  if (key === null) {
    if (!person.roles.includes('manager')) return;
    const fresh = newKey('');
    await casebook.keys.create({ ...change, personId: person.id, operation: 'keys.create' }, fresh.key, []);
    keyring.hold(session, fresh.key.id, fresh.seed);
    return;
  }
  const bound = wrapId(key.id, opened.credentialId);
  const wrap = (await casebook.keys.wraps(key.id)).find((one) => one.id === bound);
  const seed = wrap === undefined ? null : openWrap(wrap, opened.privatePart, keyring.store);
  // Whoever may sign keeps the key open that another window opened: they are given their own copy below.
  const shared = seed ?? await keyring.seedOf(key.id);
  if (shared !== null) keyring.hold(session, key.id, shared);
}

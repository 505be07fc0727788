import type { PersonView } from '../../app/contract/casebook.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { normalPassword } from '../../app/people/check-password.ts';
import type { Output } from '../../app/contract/index.ts';
import { storeNamed } from '../../app/domain/key-closing.ts';
import { maySign } from '../../app/domain/role.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../../db/change.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import type { Keyring } from '../keys/keyring.ts';
import { howClosed } from '../keys/how-closed.ts';
import { copiesDue, shareKey } from '../keys/share-key.ts';
import type { Session } from '../services/service.ts';
import { isCheap, newCredential, waste } from './derive-credential.ts';
import { openKey } from './open-key.ts';
import { prove } from './prove.ts';

/** Who says they are there: by id, or by the name as it was typed. */
export type Who = { readonly personId: string | null; readonly name: string };

export type AtTheDoor = {
  readonly casebook: Casebook;
  readonly keyring: Keyring;
  readonly session: Session;
  readonly change: Change;
  /** The person proved to be there; called before the laboratory's key is opened for them. */
  enter(person: PersonView): void;
};

/** 'choose': the person has no password yet, or a code that was given out. */
export type CameIn = { readonly state: 'choose' } | { readonly state: 'signed-in'; readonly person: PersonView; readonly note: SignInNote | null };

/** What somebody who may sign has to know of the key as they come in. */
export type SignInNote = NonNullable<Output<'people.signIn'>['note']>;

export const unknownPerson = (): { readonly ok: false; readonly error: Failure } => {
  const message = 'The name and the password do not belong together.';
  return err({ code: 'refused', message, next: 'Look whether the capital letters are locked, and try again. Every wrong attempt is written down.', fields: { password: message } });
};

/** Somebody who works here. */
export async function personAtDoor(casebook: Casebook, { personId, name }: Who): Promise<PersonView | null> {
  const typed = name.trim().toLowerCase();
  return (await casebook.people.list()).find((one) => one.active && (personId === null ? typed !== '' && one.name.toLowerCase() === typed : one.id === personId)) ?? null;
}

/** Opens the key for a person who proved to be there, where they may, and gives copies of it to those who lack one. Gives what they have to know of it. */
export async function letIn({ casebook, keyring, session, change, enter }: AtTheDoor, person: PersonView, opened: { readonly credentialId: string; readonly privatePart: Uint8Array }): Promise<SignInNote | null> {
  enter(person);
  const before = await howClosed(casebook, keyring.store);
  await openKey(casebook, keyring, session, person, opened, change);
  await shareKey(casebook, keyring, { ...change, personId: person.id, operation: 'keys.share' });
  const closed = maySign(person) ? await keyring.closedElsewhere() : null;
  if (closed !== null) return { message: closed.message, next: closed.next, trouble: true };
  const after = await howClosed(casebook, keyring.store);
  return before.closedBy === 'password' && after.closedBy === 'store' ? { message: `The laboratory’s key is kept by ${storeNamed(after.store)} from now on.`, next: 'On another computer the recovery sheet is the way to it: know where it is.', trouble: false } : null;
}

/** Signs somebody in with a password; right and wrong attempts are written into the audit ledger. `statement`: what it says of a right one. Call in turn. */
export async function comeIn(door: AtTheDoor, who: Who, password: string, statement: string): Promise<Result<CameIn, Failure>> {
  const { casebook, keyring, change } = door;
  const person = await personAtDoor(casebook, who);
  if (person === null) {
    await waste(password);
    await casebook.audit.note(change, { subject: 'sign-in', content: { refused: 'nobody of that name' } });
    return unknownPerson();
  }
  const credential = await casebook.credentials.get(person.id);
  if (credential === null) return ok({ state: 'choose' });
  const proved = await prove(casebook, change, credential, password);
  if (!proved.ok) return proved;
  if (credential.kind === 'code') return ok({ state: 'choose' });
  const own = { ...change, personId: person.id };
  await casebook.credentials.noteSuccess(own, person.id, { name: person.name, statement });
  const note = await letIn({ ...door, change: own }, person, { credentialId: person.id, privatePart: proved.value });
  if (isCheap(credential)) {
    const { credential: dearer } = await newCredential(person.id, 'password', normalPassword(password));
    await casebook.credentials.set(own, { credentials: [dearer], wraps: await copiesDue(casebook, keyring, { changed: [dearer] }), subject: person.id, content: { cost: 'raised' } });
  }
  return ok({ state: 'signed-in', person, note });
}

import type { PersonView } from '../../app/contract/casebook.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { Output } from '../../app/contract/index.ts';
import { checkPassword, normalPassword } from '../../app/people/check-password.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../../db/change.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { RECOVERY } from '../../db/store/credentials.ts';
import { copiesDue, shareKey } from '../keys/share-key.ts';
import { comeIn, letIn, personAtDoor, unknownPerson, type SignInNote } from '../people/come-in.ts';
import { newCredential } from '../people/derive-credential.ts';
import { givenCode } from '../people/given-code.ts';
import { openKey } from '../people/open-key.ts';
import { prove } from '../people/prove.ts';
import { noCasebook, notFound, refused } from './failures.ts';
import { changing, reading, type IntakeDeps } from './intake-context.ts';
import type { Services, Session } from './service.ts';

type Names = 'people.list' | 'people.save' | 'people.actAs' | 'people.signIn' | 'people.choosePassword' | 'people.changePassword' | 'people.giveCode'
  | 'people.recover' | 'people.newRecovery' | 'people.lock' | 'people.stay';

/** Why this password can't be chosen, beside its field; null where it can. */
async function unfit(casebook: Casebook, password: string, person: PersonView): Promise<{ readonly ok: false; readonly error: Failure } | null> {
  const fault = checkPassword(password, [person.name, (await casebook.laboratory.get())?.name ?? '']);
  return fault === null ? null : err({ code: 'invalid-input', message: fault, next: 'Choose another password.', fields: { password: fault } });
}

/** Who works here: signing in, passwords, codes, roles. */
export function createPeopleServices(deps: IntakeDeps): Pick<Services, Names> {
  const { keyring, guard } = deps;

  /** Work at the door of an own casebook, one attempt after the other. */
  function atDoor<T>(operation: string, work: (casebook: Casebook, change: Change) => Promise<Result<T, Failure>>): Promise<Result<T, Failure>> {
    return guard.attempt(async () => {
      const casebook = deps.manager.current();
      if (casebook === null) return noCasebook();
      if ((await casebook.laboratory.get())?.isDemonstration === true) return refused('The people of the demonstration are invented and have no passwords.', 'Choose a name.');
      return work(casebook, { at: deps.now().toISOString(), personId: null, operation });
    });
  }

  const enter = (casebook: Casebook, session: Session, person: PersonView, opened: { credentialId: string; privatePart: Uint8Array }, change: Change): Promise<SignInNote | null> =>
    letIn({ casebook, keyring, session, change, enter: () => { guard.enter(session, person.id); } }, person, opened);

  return {
    'people.list': reading(deps, async (casebook) => ok(await casebook.people.list())),

    'people.save': changing(deps, 'people.save', async (casebook, change, input) => {
      const isNew = input.id === null && (await casebook.laboratory.get())?.isDemonstration === false;
      const given = isNew ? await givenCode(deps.newId(), 'code') : null;
      const saved = await casebook.people.save(change, input, given?.credential);
      if (!saved.ok) return saved;
      await shareKey(casebook, keyring, { ...change, operation: 'keys.share' });
      return ok({ ...saved.value, code: given?.code ?? null });
    }),

    'people.actAs': async ({ personId }, call) => {
      const casebook = deps.manager.current();
      if (casebook === null) return noCasebook();
      if ((await casebook.laboratory.get())?.isDemonstration !== true) return refused('A name alone is not enough in this casebook.', 'Sign in with the password.');
      const who = await casebook.people.actAs({ at: deps.now().toISOString(), personId, operation: 'people.actAs' }, personId);
      if (who.ok) guard.enter(call.session, who.value.id);
      return who;
    },

    'people.signIn': ({ personId, name, password }, call) => atDoor<Output<'people.signIn'>>('people.signIn', async (casebook, change) => {
      const came = await comeIn({ casebook, keyring, session: call.session, change, enter: (person) => { guard.enter(call.session, person.id); } }, { personId, name }, password, 'signed in');
      if (!came.ok) return came;
      return ok(came.value.state === 'choose' ? { state: 'choose', note: null } : { state: 'signed-in', note: came.value.note });
    }),

    'people.choosePassword': ({ personId, name, code, password }, call) => atDoor('people.choosePassword', async (casebook, change) => {
      const person = await personAtDoor(casebook, { personId, name });
      if (person === null) return unknownPerson();
      const wrong = await unfit(casebook, password, person);
      if (wrong !== null) return wrong;
      const before = await casebook.credentials.get(person.id);
      if (before?.kind === 'password') return refused('There is a password already.', 'Sign in with it, or ask a manager for a new code.');
      const set = new Set((await casebook.credentials.list()).map((one) => one.id));
      const managerCame = (await casebook.people.list()).some((one) => one.roles.includes('manager') && set.has(one.id));
      if (before === null && !person.roles.includes('manager') && !managerCame) return refused('A manager chooses the first password of this casebook.', 'Let a manager sign in first; afterwards everybody chooses one.');
      const proved = before === null ? null : await prove(casebook, change, before, code);
      if (proved !== null && !proved.ok) return proved;
      const { credential, privatePart } = await newCredential(person.id, 'password', normalPassword(password));
      const own = { ...change, personId: person.id };
      if (proved !== null) await openKey(casebook, keyring, call.session, person, { credentialId: person.id, privatePart: proved.value }, own);
      await casebook.credentials.set(own, { credentials: [credential], wraps: await copiesDue(casebook, keyring, { changed: [credential] }), subject: person.id, content: { name: person.name, statement: 'chose a password and signed in' } });
      await enter(casebook, call.session, person, { credentialId: person.id, privatePart }, own);
      return ok({ done: true as const });
    }),

    'people.changePassword': changing(deps, 'people.changePassword', (casebook, change, { old, password }) => guard.attempt(async () => {
      const person = (await casebook.people.get(change.personId))!;
      const before = await casebook.credentials.get(person.id);
      if (before === null) return refused('The people of the demonstration have no passwords.', 'Nothing needs to be done.');
      const wrong = await unfit(casebook, password, person);
      if (wrong !== null) return wrong;
      const proved = await prove(casebook, change, before, old);
      if (!proved.ok) return err({ ...proved.error, fields: { old: proved.error.message } });
      const { credential } = await newCredential(person.id, 'password', normalPassword(password));
      await casebook.credentials.set(change, { credentials: [credential], wraps: await copiesDue(casebook, keyring, { changed: [credential] }), subject: person.id, content: { statement: 'changed the password' } });
      return ok({ done: true as const });
    })),

    'people.giveCode': changing(deps, 'people.giveCode', async (casebook, change, { personId, why }) => {
      const person = await casebook.people.get(personId);
      if (person === null) return notFound('That person');
      if ((await casebook.laboratory.get())?.isDemonstration === true) return refused('The people of the demonstration are invented and have no passwords.', 'Nothing needs to be done.');
      if (personId === change.personId) return refused('You can’t give yourself a code.', 'Change your password instead.');
      const { code, credential } = await givenCode(personId, 'code');
      await casebook.credentials.set(change, { credentials: [credential], wraps: await copiesDue(casebook, keyring, { changed: [credential] }), subject: personId, content: { code: 'given', name: person.name, why } });
      return ok({ code });
    }),

    'people.recover': ({ personId, name, recovery, password }, call) => atDoor('people.recover', async (casebook, change) => {
      const person = await personAtDoor(casebook, { personId, name });
      if (person === null || !person.roles.includes('manager')) return refused('The recovery sheet is for a manager.', 'Choose a manager’s name; everybody else asks a manager for a new code.');
      const before = await casebook.credentials.get(RECOVERY);
      if (before === null) return refused('This casebook has no recovery sheet.', 'Ask another manager for a new code.');
      const wrong = await unfit(casebook, password, person);
      if (wrong !== null) return wrong;
      const proved = await prove(casebook, change, before, recovery);
      if (!proved.ok) return proved;
      const own = { ...change, personId: person.id };
      await openKey(casebook, keyring, call.session, person, { credentialId: RECOVERY, privatePart: proved.value }, own);
      const { credential, privatePart } = await newCredential(person.id, 'password', normalPassword(password));
      const sheet = await givenCode(RECOVERY, 'recovery');
      const credentials = [credential, sheet.credential];
      await casebook.credentials.set(own, { credentials, wraps: await copiesDue(casebook, keyring, { changed: credentials, closing: 'here' }), subject: person.id, content: { name: person.name, statement: 'chose a new password with the recovery sheet, which was replaced' } });
      await enter(casebook, call.session, person, { credentialId: person.id, privatePart }, own);
      return ok({ recovery: sheet.code });
    }),

    'people.newRecovery': changing(deps, 'people.newRecovery', async (casebook, change) => {
      if ((await casebook.laboratory.get())?.isDemonstration === true) return refused('The demonstration needs no recovery sheet.', 'Nothing needs to be done.');
      const sheet = await givenCode(RECOVERY, 'recovery');
      await casebook.credentials.set(change, { credentials: [sheet.credential], wraps: await copiesDue(casebook, keyring, { changed: [sheet.credential] }), subject: RECOVERY, content: { statement: 'a new recovery sheet replaces the one before' } });
      return ok({ recovery: sheet.code });
    }),

    'people.lock': async (_input, call) => {
      const laboratory = await deps.manager.current()?.laboratory.get();
      if (laboratory?.isDemonstration === true) guard.leave(call.session);
      else if (call.session.personId !== null) guard.lock(call.session);
      return ok({ done: true as const });
    },

    'people.stay': reading(deps, async (_casebook, _input, call) => {
      guard.touch(call.session);
      return ok({ done: true as const });
    }),
  };
}

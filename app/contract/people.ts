import { z } from 'zod';
import { MAX_PASSWORD } from '../people/check-password.ts';
import { done, filled, id, line, nothing } from './common.ts';
import { personInput, personView } from './house-views.ts';
import { changes, reads } from './operation.ts';

/** At the door a person is named by id where the names are shown, else by the name as it was typed. */
const who = { personId: id.nullable(), name: line(120).default('') };
/** Judged by app/people/check-password.ts where one is chosen. */
const secret = z.string().max(2 * MAX_PASSWORD, `At most ${MAX_PASSWORD} characters.`);
const recoverySheet = z.object({ recovery: z.string() });

export const peopleContract = {
  'people.list': reads('anyone', nothing, z.array(personView)),
  /** `code`: what a new person signs in with once; null where the person was there before. */
  'people.save': changes(['manager'], personInput.extend({ id: id.nullable(), active: z.boolean() }), personView.extend({ code: z.string().nullable() })),
  /** Says who works at this window, in the demonstration alone: its invented people have no passwords. */
  'people.actAs': changes('door', z.strictObject({ personId: id }), personView),
  /**
   * `choose`: the password was a code that is good once, or there is none yet; nobody is signed in until one is chosen.
   * `note`: what the person should know of the laboratory's key; `trouble` where it did not open.
   */
  'people.signIn': changes('door', z.strictObject({ ...who, password: secret }), z.object({
    state: z.enum(['signed-in', 'choose']), note: z.object({ message: z.string(), next: z.string(), trouble: z.boolean() }).nullable(),
  })),
  /** Replaces a one-time code (or, in a casebook from before passwords, nothing: '') by a password, and signs in. */
  'people.choosePassword': changes('door', z.strictObject({ ...who, code: secret, password: secret }), done),
  'people.changePassword': changes('anyone', z.strictObject({ old: secret, password: secret }), done),
  /** For who lost a password: it no longer holds, and the code does, once. */
  'people.giveCode': changes(['manager'], z.strictObject({ personId: id, why: filled('Write why a new code is given.', 400) }), z.object({ code: z.string() })),
  /** For a manager who lost theirs with nobody to ask: the recovery sheet. It is used up, and a new one is given. */
  'people.recover': changes('door', z.strictObject({ ...who, recovery: secret, password: secret }), recoverySheet),
  /** A new recovery sheet; the one before no longer holds. */
  'people.newRecovery': changes(['manager'], nothing, recoverySheet),
  /** Closes this window until the person's password is given, or another person signs in. */
  'people.lock': reads('door', nothing, done),
  /** Somebody is at work here: the time until the window locks itself begins anew. */
  'people.stay': reads('anyone', nothing, done),
};

import type { PersonView } from '../../app/contract/casebook.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { comeIn, personAtDoor, unknownPerson } from '../people/come-in.ts';
import type { Session } from '../services/service.ts';
import type { CasebookToChange } from './casebook-to-change.ts';
import { EXIT, type CliIo, type ExitCode } from './io.ts';
import { sayTrouble, type Trouble } from './trouble.ts';

export type SignInOptions = {
  /** Name of the person, as it stands in the casebook. */
  readonly person: string | undefined;
  /** The password is the first line of standard input. */
  readonly passwordStdin: boolean;
};

/** More than any password is long, bytes. */
const LONGEST_INPUT = 8192;

/** The password, from where it may come: never from an argument, which other people on the machine can see. */
async function secretOf({ person, passwordStdin }: SignInOptions, io: CliIo): Promise<Result<string, Trouble>> {
  if (passwordStdin) {
    const given = await io.readStdin();
    if (given.byteLength > LONGEST_INPUT) return err({ code: 'no-password', message: 'What standard input holds is too long to be a password.', next: 'Hand in the password alone, on one line.' });
    return ok(new TextDecoder().decode(given).replace(/\r?\n[^]*$/, ''));
  }
  const typed = await io.askSecret?.(`Password of ${person ?? ''}: `) ?? null;
  return typed === null ? err({ code: 'no-password', message: 'No password was given.', next: 'Type it when you are asked, or hand it in with --password-stdin.' }) : ok(typed);
}

/** Says what is wrong with how somebody wants to sign in; null where it can be tried. */
export function signInUsage({ person, passwordStdin }: SignInOptions, io: CliIo, json: boolean): ExitCode | null {
  if (person !== undefined || !passwordStdin) return null;
  sayTrouble({ code: 'usage', message: '--password-stdin needs the name of the person whose password it is.', next: 'Name the person with --person.' }, json, io);
  return EXIT.usage;
}

/** Signs a person in, as the window does: right and wrong attempts are written into the audit ledger, and the wait after wrong ones is kept. `purpose`: what for, in the ledger. */
export async function signInAtTerminal({ casebook, keyring }: Pick<CasebookToChange, 'casebook' | 'keyring'>, options: SignInOptions, purpose: string, session: Session, io: CliIo): Promise<Result<PersonView, Trouble>> {
  const change = { at: new Date().toISOString(), personId: null, operation: 'people.signIn' };
  const who = { personId: null, name: options.person ?? '' };
  const statement = `signed in on the command line ${purpose}`;
  if ((await casebook.laboratory.get())?.isDemonstration === true) {
    if (options.passwordStdin) return err({ code: 'refused', message: 'The people of the demonstration are invented and have no passwords.', next: 'Leave --password-stdin out.' });
    const person = await personAtDoor(casebook, who);
    if (person === null) return err({ code: 'not-found', message: 'Nobody of that name works in the demonstration.', next: 'Name a person as the window shows it.' });
    await casebook.audit.note({ ...change, personId: person.id }, { subject: person.id, content: { name: person.name, statement } });
    session.personId = person.id;
    return ok(person);
  }
  const secret = await secretOf(options, io);
  if (!secret.ok) return secret;
  const came = await comeIn({ casebook, keyring, session, change: { ...change, at: new Date().toISOString() }, enter: (person) => { session.personId = person.id; } }, who, secret.value, statement);
  if (!came.ok) return came;
  if (came.value.state === 'choose') return err({ ...unknownPerson().error, code: 'no-password', message: 'This person has chosen no password yet.', next: 'Choose one in the window first.' });
  return ok(came.value.person);
}

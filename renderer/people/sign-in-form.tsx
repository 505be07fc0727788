import { useState } from 'react';
import type { Output } from '../../app/contract/index.ts';
import { MIN_PASSWORD } from '../../app/people/check-password.ts';
import { rolesText } from '../house/roles-text.ts';
import { Button } from '../look/button.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';
import { PasswordField } from './password-field.tsx';
import { showRecoverySheet } from './recovery-sheet.tsx';
import './people.css';

type AtDoor = Output<'casebook.status'>['people'][number];
type Step = 'who' | 'password' | 'choose' | 'recover';

/** Name, then password; a code that is good once is replaced at once. Everything by keyboard. `start`: whose password is asked for first. */
export function SignInForm({ people, showNames, start, onDone }: { readonly people: readonly AtDoor[]; readonly showNames: boolean; readonly start: AtDoor | null; readonly onDone: () => void }) {
  const [person, setPerson] = useState<AtDoor | null>(start);
  const [name, setName] = useState('');
  const [step, setStep] = useState<Step>(start === null && showNames ? 'who' : stepFor(start));
  const [password, setPassword] = useState('');
  const [chosen, setChosen] = useState('');
  const [again, setAgain] = useState('');
  const signIn = useChange('people.signIn');
  const choose = useChange('people.choosePassword');
  const recover = useChange('people.recover');
  const notes = useNotes();
  const who = person === null ? { personId: null, name } : { personId: person.id };
  const asked = step === 'choose' ? choose : step === 'recover' ? recover : signIn;
  const wrong = asked.error?.failure.fields ?? {};
  const differ = chosen !== again && again !== '' ? 'The two do not agree.' : undefined;
  const move = (to: Step) => { for (const one of [signIn, choose, recover]) one.reset(); setStep(to); };
  const tell = (note: Output<'people.signIn'>['note']) => {
    if (note?.trouble === true) notes.complain(note);
    else if (note !== null) notes.say(`${note.message} ${note.next}`);
  };
  const submit = () => {
    if (asked.isPending || (step !== 'password' && chosen !== again)) return;
    if (step === 'choose') choose.mutate({ ...who, code: password, password: chosen }, { onSuccess: onDone });
    else if (step === 'recover') recover.mutate({ ...who, recovery: password, password: chosen }, { onSuccess: ({ recovery }) => { showRecoverySheet(recovery); onDone(); } });
    else signIn.mutate({ ...who, password }, { onSuccess: ({ state, note }) => { if (state === 'choose') move('choose'); else { tell(note); onDone(); } } });
  };

  if (step === 'who') {
    return (
      <ul className="people-choice" aria-label="People">
        {people.filter((one) => one.active).map((one, i) => (
          <li key={one.id}>
            <button type="button" autoFocus={i === 0} onClick={() => { setPerson(one); setPassword(''); move(stepFor(one)); }}>
              <span className="sign-in-who"><span className="mono quiet">{one.initials}</span><span>{one.name}</span></span><span className="quiet">{rolesText(one.roles)}</span>
            </button>
          </li>
        ))}
      </ul>
    );
  }
  return (
    <form className="sign-in" onSubmit={(event) => { event.preventDefault(); submit(); }}>
      {person === null
        ? <Field label="Your name" value={name} onChange={setName} autoFocus />
        : <p className="sign-in-name"><span className="mono quiet">{person.initials}</span> {person.name} <span className="quiet">{rolesText(person.roles)}</span></p>}
      {step === 'password' ? <PasswordField key="password" label="Password or one-time code" value={password} onChange={setPassword} refusal={wrong['password']} autoFocus={person !== null} /> : null}
      {step === 'recover' ? (
        <>
          <p className="second">Ask a manager for a new code. A manager with nobody to ask takes the recovery sheet:</p>
          <Field label="Code on the recovery sheet" mono value={password} onChange={setPassword} refusal={wrong['recovery']} autoFocus />
        </>
      ) : null}
      {step === 'choose' ? <p className="second">{person?.opensWith === 'nothing' ? 'There is no password for this name yet. Choose one; from now on it is asked for.' : 'The code is good once: choose a password of your own.'}</p> : null}
      {step === 'password' ? null : (
        <>
          <PasswordField label="New password" value={chosen} onChange={setChosen} refusal={wrong['password']} hint={`At least ${MIN_PASSWORD} characters; several words in a row are easy to remember.`} autoFocus={step === 'choose'} />
          <PasswordField label="New password, once more" value={again} onChange={setAgain} error={differ} />
        </>
      )}
      {step === 'password' && asked.error && wrong['password'] !== undefined ? <p className="second">{asked.error.failure.next}</p> : null}
      {asked.error && Object.keys(wrong).length === 0 ? <Trouble {...asked.error.failure} /> : null}
      <div className="row gap8 sign-in-acts">
        <Button kind="main" type="submit" isPending={asked.isPending}>{asked.isPending ? 'Checking …' : step === 'password' ? 'Sign in' : 'Keep the password and sign in'}</Button>
        {showNames && person !== null ? <Button kind="quiet" onPress={() => { setPerson(null); move('who'); }}>Someone else</Button> : null}
        {!showNames && person !== null ? <Button kind="quiet" onPress={() => { setPerson(null); move('password'); }}>Someone else</Button> : null}
        {step === 'password' ? <Button kind="quiet" onPress={() => { setPassword(''); move('recover'); }}>Lost password</Button> : null}
        {step === 'recover' ? <Button kind="quiet" onPress={() => { setPassword(''); move('password'); }}>Back</Button> : null}
      </div>
    </form>
  );
}

function stepFor(person: AtDoor | null): Step {
  return person?.opensWith === 'nothing' ? 'choose' : 'password';
}

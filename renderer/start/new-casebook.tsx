import { useState } from 'react';
import { ROLES, ROLE_WORDS, type Role } from '../../app/domain/role.ts';
import { Button } from '../look/button.tsx';
import { Check, Choice } from '../look/choice.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { Trouble } from '../look/empty.tsx';
import { MIN_PASSWORD } from '../../app/people/check-password.ts';
import { PasswordField } from '../people/password-field.tsx';
import { showRecoverySheet } from '../people/recovery-sheet.tsx';
import { useChange } from '../queries.ts';
import { initialsOf } from '../house/initials.ts';
import { LogoField, type Logo } from '../house/logo-field.tsx';
import { HERE, ZONES } from '../house/zones.ts';

/** Laboratory, address, zone, logo, first person: what a casebook must know before it begins. */
export function NewCasebook({ onBack }: { readonly onBack: () => void }) {
  const [name, setName] = useState('');
  const [address, setAddress] = useState('');
  const [zone, setZone] = useState(HERE);
  const [logo, setLogo] = useState<Logo | null>(null);
  const [person, setPerson] = useState('');
  const [initials, setInitials] = useState('');
  const [roles, setRoles] = useState<readonly Role[]>(ROLES);
  const [password, setPassword] = useState('');
  const [again, setAgain] = useState('');
  const create = useChange('casebook.create');
  const wrong = create.error?.failure.fields ?? {};
  useFocusWrong('.start-form', null, create.error);
  const differ = password !== again ? 'The two do not agree.' : undefined;
  const submit = () => {
    if (differ !== undefined || create.isPending) return;
    create.mutate({ name, address, zone, logo, person: { name: person, initials: initials || initialsOf(person), roles: [...roles], password } }, { onSuccess: ({ recovery }) => { showRecoverySheet(recovery); } });
  };
  return (
    <form className="start-form" onSubmit={(e) => { e.preventDefault(); submit(); }}>
      <h2>Your laboratory</h2>
      <Field label="Laboratory’s name, as on its reports" value={name} onChange={setName} refusal={wrong['name']} autoFocus />
      <Field label="Address" lines={2} value={address} onChange={setAddress} refusal={wrong['address']} hint="Stands at the head of every report; a report can’t be issued without it." />
      <div className="fields-two">
        <Choice label="Time zone" value={zone} onChange={setZone} options={ZONES.map((z) => ({ value: z, label: z.replaceAll('_', ' ') }))} error={wrong['zone']} />
        <LogoField logo={logo} onChange={setLogo} />
      </div>
      <h2>First person</h2>
      <div className="fields-two">
        <Field label="Name" value={person} onChange={setPerson} refusal={wrong['person.name']} />
        <Field label="Initials" value={initials} onChange={setInitials} placeholder={initialsOf(person) || 'A.B.'} refusal={initials === '' && initialsOf(person) !== '' ? undefined : wrong['person.initials']} />
      </div>
      <div className="fields-two">
        <PasswordField label="Password" value={password} onChange={setPassword} refusal={wrong['person.password']} hint={`At least ${MIN_PASSWORD} characters; several words in a row are easy to remember.`} />
        <PasswordField label="Password, once more" value={again} onChange={setAgain} error={again === '' && create.error === null ? undefined : differ} />
      </div>
      <fieldset className="fields-ticks">
        <legend className="label">Roles</legend>
        {ROLES.map((r) => <Check key={r} label={ROLE_WORDS[r]} checked={roles.includes(r)} onChange={(on) => { setRoles(on ? [...roles, r] : roles.filter((x) => x !== r)); }} />)}
        {wrong['person.roles'] ? <span className="field-error">{wrong['person.roles']}</span> : null}
      </fieldset>
      <p className="quiet">A conclusion needs a second person to confirm it: add colleagues under House afterwards.</p>
      {create.error && Object.keys(wrong).length === 0 ? <Trouble {...create.error.failure} /> : null}
      <div className="row gap8">
        <Button kind="main" type="submit" isPending={create.isPending}>{create.isPending ? 'Starting …' : 'Start the casebook'}</Button>
        <Button kind="quiet" onPress={onBack}>Back</Button>
      </div>
    </form>
  );
}

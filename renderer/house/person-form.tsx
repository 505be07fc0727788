import { useState } from 'react';
import type { PersonView } from '../../app/contract/casebook.ts';
import { ROLES, ROLE_WORDS, type Role } from '../../app/domain/role.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Check } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';
import { initialsOf } from './initials.ts';

/** `onCode`: a new person signs in with it once. */
export function PersonForm({ person, onClose, onCode }: { readonly person: PersonView | null; readonly onClose: () => void; readonly onCode: (name: string, code: string) => void }) {
  const [name, setName] = useState(person?.name ?? '');
  const [initials, setInitials] = useState(person?.initials ?? '');
  const [roles, setRoles] = useState<readonly Role[]>(person?.roles ?? ['examiner', 'second-examiner']);
  const [active, setActive] = useState(person?.active ?? true);
  const save = useChange('people.save');
  const wrong = save.error?.failure.fields ?? {};
  const submit = () => { save.mutate({ id: person?.id ?? null, name, initials: initials || initialsOf(name), roles: [...roles], active }, { onSuccess: ({ name: called, code }) => { if (code !== null) onCode(called, code); onClose(); } }); };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, save.error);
  return (
    <Dialog asks title={person ? person.name : 'A new person'} onClose={onClose} width={460} footer={<Button kind="main" keys="Mod+Enter" isPending={save.isPending} onPress={submit}>Keep</Button>}>
      <Field label="Name" value={name} onChange={setName} refusal={wrong['name']} autoFocus />
      <Field label="Initials" value={initials} onChange={setInitials} placeholder={initialsOf(name)} refusal={initials === '' && initialsOf(name) !== '' ? undefined : wrong['initials']} />
      <fieldset className="fields-ticks">
        <legend className="label">Roles</legend>
        {ROLES.map((r) => <Check key={r} label={ROLE_WORDS[r]} checked={roles.includes(r)} onChange={(on) => { setRoles(on ? [...roles, r] : roles.filter((x) => x !== r)); }} />)}
        {wrong['roles'] ? <span className="field-error">{wrong['roles']}</span> : null}
      </fieldset>
      {person ? <Check label="Works here" checked={active} onChange={setActive} /> : null}
      {save.error && Object.keys(wrong).length === 0 ? <Trouble {...save.error.failure} /> : null}
    </Dialog>
  );
}

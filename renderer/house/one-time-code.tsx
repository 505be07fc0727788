import { useState } from 'react';
import type { PersonView } from '../../app/contract/casebook.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useKey } from '../keys/keymap.ts';
import { useChange } from '../queries.ts';
import '../people/people.css';

/** A code that was just given out: shown once. */
export function OneTimeCode({ name, code, onClose }: { readonly name: string; readonly code: string; readonly onClose: () => void }) {
  return (
    <Dialog title={`A code for ${name}`} width={460} onClose={onClose} footer={<Button kind="main" onPress={onClose}>It is handed over</Button>}>
      <p className="mono one-time-code">{code}</p>
      <p className="second">Good for one sign-in, at which {name} chooses a password. It is shown only now: hand it over in person.</p>
    </Dialog>
  );
}

/** For who lost a password: a new code, with the reason. */
export function GiveCode({ person, onClose, onCode }: { readonly person: PersonView; readonly onClose: () => void; readonly onCode: (name: string, code: string) => void }) {
  const [why, setWhy] = useState('');
  const give = useChange('people.giveCode');
  const wrong = give.error?.failure.fields ?? {};
  const submit = () => { give.mutate({ personId: person.id, why }, { onSuccess: ({ code }) => { onClose(); onCode(person.name, code); } }); };
  useKey('Mod+Enter', submit);
  return (
    <Dialog title={`New code for ${person.name}`} width={460} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={give.isPending} onPress={submit}>Give the code</Button>}>
      <p className="second">The present password no longer holds. Who gave the code, to whom and why is written into the audit ledger.</p>
      <Field label="Why" value={why} onChange={setWhy} refusal={wrong['why']} autoFocus />
      {give.error && Object.keys(wrong).length === 0 ? <Trouble {...give.error.failure} /> : null}
    </Dialog>
  );
}

import { useState } from 'react';
import type { ClientView } from '../../app/contract/cases.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';

/** How a client is called and reached; issued reports keep what they said. */
export function ClientForm({ client, onClose }: { readonly client: ClientView; readonly onClose: () => void }) {
  const [name, setName] = useState(client.name);
  const [address, setAddress] = useState(client.address);
  const [email, setEmail] = useState(client.email);
  const [phone, setPhone] = useState(client.phone);
  const [note, setNote] = useState(client.note);
  const save = useChange('clients.save');
  const wrong = save.error?.failure.fields ?? {};
  const submit = () => { save.mutate({ id: client.id, name, address, email, phone, note }, { onSuccess: onClose }); };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, save.error);
  return (
    <Dialog asks title="The client" onClose={onClose} width={480} footer={<Button kind="main" keys="Mod+Enter" isPending={save.isPending} onPress={submit}>Keep</Button>}>
      <Field label="Name" value={name} onChange={setName} refusal={wrong['name']} autoFocus />
      <Field label="Address" lines={2} value={address} onChange={setAddress} refusal={wrong['address']} />
      <div className="fields-two">
        <Field label="E-mail" type="email" value={email} onChange={setEmail} refusal={wrong['email']} />
        <Field label="Telephone" type="tel" value={phone} onChange={setPhone} refusal={wrong['phone']} />
      </div>
      <Field label="Note, for the house only" lines={2} value={note} onChange={setNote} refusal={wrong['note']} />
      {save.error && Object.keys(wrong).length === 0 ? <Trouble {...save.error.failure} /> : null}
    </Dialog>
  );
}

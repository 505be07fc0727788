import { useState } from 'react';
import { MIN_PASSWORD } from '../../app/people/check-password.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { useNotes } from '../look/notes.tsx';
import { useKey } from '../keys/keymap.ts';
import { PasswordField } from '../people/password-field.tsx';
import { useChange } from '../queries.ts';

/** One's own password: the old one, and the new one twice. */
export function ChangePassword({ onClose }: { readonly onClose: () => void }) {
  const [old, setOld] = useState('');
  const [chosen, setChosen] = useState('');
  const [again, setAgain] = useState('');
  const change = useChange('people.changePassword');
  const notes = useNotes();
  const wrong = change.error?.failure.fields ?? {};
  const differ = chosen !== again && again !== '' ? 'The two do not agree.' : undefined;
  const submit = () => {
    if (chosen === again && !change.isPending) change.mutate({ old, password: chosen }, { onSuccess: () => { notes.say('The password is changed.'); onClose(); } });
  };
  useKey('Mod+Enter', submit);
  return (
    <Dialog title="Change your password" width={460} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={change.isPending} onPress={submit}>Change it</Button>}>
      <PasswordField label="Present password" value={old} onChange={setOld} refusal={wrong['old']} autoFocus />
      <PasswordField label="New password" value={chosen} onChange={setChosen} refusal={wrong['password']} hint={`At least ${MIN_PASSWORD} characters.`} />
      <PasswordField label="New password, once more" value={again} onChange={setAgain} error={differ} />
      {change.error && Object.keys(wrong).length === 0 ? <Trouble {...change.error.failure} /> : null}
    </Dialog>
  );
}

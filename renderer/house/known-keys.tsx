import { useRef, useState } from 'react';
import { fingerprintOf, inGroups } from '../../app/signature/fingerprint.ts';
import { readPublicKeyFile } from '../../app/signature/public-key-file.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { showMoment } from '../look/time.ts';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useAsk, useChange } from '../queries.ts';
import { useHouse } from './house-context.tsx';

/** Public keys of other laboratories: a report that one of them signed is then told as theirs. */
export function KnownKeys() {
  const { laboratory, me } = useHouse();
  const keys = useAsk('keys.list', {});
  const drop = useChange('keys.dropKnown');
  const notes = useNotes();
  const [adding, setAdding] = useState(false);
  const known = keys.data?.known ?? [];
  const mayAdd = me !== null && me.roles.some((role) => role === 'manager' || role === 'appraiser');
  const mayDrop = me !== null && me.roles.includes('manager');
  return (
    <section className="section house-people">
      <div className="row gap16"><h2 className="grow">Keys of other laboratories</h2>{mayAdd ? <Button onPress={() => { setAdding(true); }}>Add a key</Button> : null}</div>
      {known.length === 0 && keys.data ? <p className="second">None yet. A report of another laboratory is told as theirs when their public key is kept here; without it Culet can only say that the report is unaltered.</p> : null}
      <ul className="rows">
        {known.map((key) => (
          <li key={key.id} className="row gap12">
            <div className="grow">
              <p>{key.laboratory}{key.active ? '' : ', no longer trusted'}</p>
              <p className="mono key-fingerprint">{inGroups(key.fingerprint)}</p>
              <p className="quiet">{key.checkedHow} · added {showMoment(key.addedAt, laboratory.zone)}</p>
            </div>
            {key.active && mayDrop ? <Button kind="quiet" isPending={drop.isPending} aria-label={`No longer trust the key of ${key.laboratory}`} onPress={() => { drop.mutate({ keyId: key.id }, { onSuccess: () => { notes.say(`Reports signed with this key of ${key.laboratory} are told as of an unknown key from now on.`); }, onError: (e) => { notes.complain(e.failure); } }); }}>No longer trust</Button> : null}
          </li>
        ))}
      </ul>
      {adding ? <AddKey onClose={() => { setAdding(false); }} /> : null}
    </section>
  );
}

function AddKey({ onClose }: { readonly onClose: () => void }) {
  const [text, setText] = useState('');
  const [name, setName] = useState<string | null>(null);
  const [checkedHow, setCheckedHow] = useState('');
  const picker = useRef<HTMLInputElement>(null);
  const keep = useChange('keys.keepKnown');
  const notes = useNotes();
  const read = text.trim() === '' ? null : readPublicKeyFile(text);
  const laboratory = name ?? (read?.ok ? read.value.laboratory : '');
  const wrong = keep.error?.failure.fields ?? {};
  const submit = () => {
    keep.mutate({ file: new TextEncoder().encode(text), laboratory, checkedHow }, { onSuccess: (key) => { notes.say(`The key of ${key.laboratory} is kept.`); onClose(); } });
  };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, keep.error);
  return (
    <Dialog asks title="Key of another laboratory" width={560} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={keep.isPending} onPress={submit}>Keep it</Button>}>
      <Field label="Public key, as the laboratory handed it out" lines={5} value={text} onChange={setText} error={read && !read.ok ? read.error : wrong['file']} placeholder="-----BEGIN PUBLIC KEY-----" autoFocus />
      <div className="row gap12">
        <Button onPress={() => picker.current?.click()}>Choose the file</Button>
        <input ref={picker} type="file" className="hide" tabIndex={-1} aria-label="File of the public key" accept=".pem,.txt,application/x-pem-file" onChange={(e) => { void e.target.files?.[0]?.text().then(setText); e.target.value = ''; }} />
      </div>
      {read?.ok ? <div><p className="label">Fingerprint</p><p className="mono key-fingerprint">{inGroups(fingerprintOf(read.value.publicKey))}</p><p className="quiet">Compare it with what the laboratory tells you by another way, for instance by telephone: whoever sent the file may not be who they say.{read.value.invented ? ' This key is marked as invented: it proves nothing.' : ''}</p></div> : null}
      <Field label="Whose key it is" value={laboratory} onChange={setName} error={wrong['laboratory']} />
      <Field label="How you made sure" value={checkedHow} onChange={setCheckedHow} error={wrong['checkedHow']} placeholder="fingerprint read out by telephone" />
      {keep.error && Object.keys(wrong).length === 0 ? <Trouble {...keep.error.failure} /> : null}
    </Dialog>
  );
}

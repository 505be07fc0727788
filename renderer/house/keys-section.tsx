import { useState } from 'react';
import { inGroups } from '../../app/signature/fingerprint.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { showMoment } from '../look/time.ts';
import { useKey } from '../keys/keymap.ts';
import { useAsk, useChange } from '../queries.ts';
import { door } from '../door.ts';
import { useHouse } from './house-context.tsx';
import { isElsewhere, KeyClosing } from './key-closing.tsx';

/** The key that signs reports, for strangers to check them with. */
export function KeysSection() {
  const { laboratory } = useHouse();
  const keys = useAsk('keys.list', {});
  const [renewing, setRenewing] = useState(false);
  const notes = useNotes();
  const hand = async (keyId: string) => {
    const reply = await door.call('keys.export', { keyId });
    if (reply.ok) saveFile(reply.value.name, 'application/x-pem-file', reply.value.bytes);
    else notes.complain(reply.error);
  };
  const own = keys.data?.own ?? [];
  return (
    <section className="section house-people" aria-label="The laboratory’s key">
      <div className="row gap16"><h2 className="grow">The laboratory’s key</h2>{laboratory.isDemonstration ? null : <Button onPress={() => { setRenewing(true); }}>Make a new key</Button>}</div>
      {own.length === 0 && keys.data ? <p className="second">There is none yet: it is made when a manager signs in.</p> : null}
      <ul className="rows">
        {own.map((key) => (
          <li key={key.id} className="row gap12">
            <div className="grow">
              <p className="mono key-fingerprint">{inGroups(key.fingerprint)}</p>
              <p className="quiet">{key.current ? 'signs' : 'signed earlier'} · made {showMoment(key.createdAt, laboratory.zone)}{key.reason ? ` · ${key.reason}` : ''}</p>
            </div>
            <Button kind="quiet" aria-label={`Save the public key ${key.id}`} onPress={() => { void hand(key.id); }}>Save for strangers</Button>
          </li>
        ))}
      </ul>
      {own.length > 0 && laboratory.isDemonstration ? <p className="quiet">Its private part lies open in this casebook: it is invented and no secret.</p> : null}
      {own.length > 0 && !laboratory.isDemonstration && keys.data ? <KeyClosing closing={keys.data.closing} isOpen={keys.data.open} /> : null}
      <p className="quiet">Whoever checks a report compares this fingerprint with what you tell them by another way. {keys.data?.open === false && !isElsewhere(keys.data.closing, false) ? 'The key is locked at the moment: an appraiser or a manager opens it by signing in.' : ''}</p>
      {renewing ? <RenewKey onClose={() => { setRenewing(false); }} /> : null}
    </section>
  );
}

function RenewKey({ onClose }: { readonly onClose: () => void }) {
  const [reason, setReason] = useState('');
  const renew = useChange('keys.renew');
  const wrong = renew.error?.failure.fields ?? {};
  const submit = () => { renew.mutate({ reason }, { onSuccess: onClose }); };
  useKey('Mod+Enter', submit);
  return (
    <Dialog title="Make a new key" width={460} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={renew.isPending} onPress={submit}>Make it</Button>}>
      <p className="second">From now on reports are signed with the new key. What the present one signed stays good; strangers need the new public key.</p>
      <Field label="Why" value={reason} onChange={setReason} error={wrong['reason']} autoFocus />
      {renew.error && Object.keys(wrong).length === 0 ? <Trouble {...renew.error.failure} /> : null}
    </Dialog>
  );
}

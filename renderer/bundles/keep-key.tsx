import { useState } from 'react';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useChange } from '../queries.ts';

/** Asks how the fingerprint was compared, and keeps the key that signed a bundle as that of its laboratory. */
export function KeepKey({ id, laboratory, fingerprint, onClose }: { readonly id: string; readonly laboratory: string; /** In groups, as it is read out. */ readonly fingerprint: string; readonly onClose: () => void }) {
  const [checkedHow, setCheckedHow] = useState('');
  const keep = useChange('bundles.keepKey');
  const send = () => { if (!keep.isPending) keep.mutate({ id, checkedHow }, { onSuccess: onClose }); };
  useKey('Mod+Enter', send);
  const failure = keep.error?.failure;
  const wrong = failure?.fields?.['checkedHow'];
  return (
    <Dialog asks title="Keep the key as known" width={640} onClose={onClose}
      footer={<><Button onPress={onClose}>Not now</Button><Button kind="main" keys="Mod+Enter" isDisabled={keep.isPending} onPress={send}>Keep the key</Button></>}>
      <p>From now on this key counts as that of <b className="keep-key-whose">{laboratory}</b>: what it signed is called authentic.</p>
      <p className="mono keep-key-print">{fingerprint}</p>
      <p className="warn">Compare all of it with the laboratory by another way than the one the bundle came by, for instance on the telephone, at a number that you did not take from the bundle. Whoever sent a false bundle would send a false fingerprint with it.</p>
      <Field label="How you compared it" autoFocus placeholder="for instance: fingerprint read out by telephone" value={checkedHow} error={wrong} onChange={setCheckedHow} />
      {failure && wrong === undefined ? <Trouble {...failure} /> : null}
    </Dialog>
  );
}

import { useState } from 'react';
import { closingWords, storeNamed, type KeyClosing as Closing } from '../../app/domain/key-closing.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useKey } from '../keys/keymap.ts';
import { showRecoverySheet } from '../people/recovery-sheet.tsx';
import { useChange } from '../queries.ts';
import { useHouse } from './house-context.tsx';

/** Whether no password opens the key here. */
export const isElsewhere = (closing: Closing, isOpen: boolean): boolean => closing.closedBy !== 'none' && closing.closedBy !== 'password' && !closing.opensHere && !isOpen;

/** How the private part of the key is kept, in words, and what a manager may do about it. */
export function KeyClosing({ closing, isOpen }: { readonly closing: Closing; readonly isOpen: boolean }) {
  const { me } = useHouse();
  const [asked, setAsked] = useState<'use' | 'leave' | 'sheet' | null>(null);
  const isManager = me?.roles.includes('manager') === true;
  const held = closing.closedBy === 'store' || closing.closedBy === 'both';
  const elsewhere = isElsewhere(closing, isOpen);
  const words = closingWords(closing);
  const close = () => { setAsked(null); };
  return (
    <div className="key-closing">
      <p className={elsewhere ? 'warn' : ''}>{words.state}</p>
      <p className="quiet">{words.more}</p>
      {isManager ? (
        <div className="row gap8">
          {elsewhere && closing.sheet ? <Button onPress={() => { setAsked('sheet'); }}>Open with the recovery sheet</Button> : null}
          {isOpen && closing.wanted && (held || closing.offered !== null) ? <Button onPress={() => { setAsked('leave'); }}>Use the passwords only</Button> : null}
          {isOpen && closing.offered !== null && closing.sheet && (!closing.wanted || closing.closedBy !== 'store') ? <Button onPress={() => { setAsked('use'); }}>Use the key store</Button> : null}
        </div>
      ) : null}
      {asked === 'sheet' ? <OpenWithSheet closing={closing} onClose={close} /> : null}
      {asked === 'use' || asked === 'leave' ? <UseStore used={asked === 'use'} closing={closing} onClose={close} /> : null}
    </div>
  );
}

function UseStore({ used, closing, onClose }: { readonly used: boolean; readonly closing: Closing; readonly onClose: () => void }) {
  const [reason, setReason] = useState('');
  const decide = useChange('keys.useStore');
  const notes = useNotes();
  const wrong = decide.error?.failure.fields ?? {};
  const store = storeNamed(used ? closing.offered : closing.store ?? closing.offered);
  const submit = () => {
    if (!decide.isPending) decide.mutate({ used, reason }, { onSuccess: () => { notes.say(used ? `The key is kept by ${store}.` : 'The key is kept by the passwords only.'); onClose(); } });
  };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, decide.error);
  return (
    <Dialog title={used ? 'Use the key store' : 'Use the passwords only'} width={460} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={decide.isPending} onPress={submit}>{used ? 'Use it' : 'Use the passwords only'}</Button>}>
      <p className="second">{used
        ? `From now on the key opens with a password and ${store} together, on this computer and account. Elsewhere only the recovery sheet opens it: see that it is at hand first.`
        : `From now on a password alone opens the key, on any computer that has the casebook. Decide so where several computers or accounts, or a window in a browser, sign with one casebook.`}</p>
      <Field label="Why" value={reason} onChange={setReason} error={wrong['reason']} autoFocus />
      {decide.error && Object.keys(wrong).length === 0 ? <Trouble {...decide.error.failure} /> : null}
    </Dialog>
  );
}

function OpenWithSheet({ closing, onClose }: { readonly closing: Closing; readonly onClose: () => void }) {
  const [code, setCode] = useState('');
  const open = useChange('keys.openWithSheet');
  const wrong = open.error?.failure.fields ?? {};
  const submit = () => {
    if (!open.isPending) open.mutate({ recovery: code }, { onSuccess: ({ recovery }) => { onClose(); showRecoverySheet(recovery); } });
  };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, open.error);
  return (
    <Dialog title="Open the key with the recovery sheet" width={460} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={open.isPending} onPress={submit}>{open.isPending ? 'Checking …' : 'Open it'}</Button>}>
      <p className="second">Everybody who may sign then opens the key here with their password{closing.offered !== null && closing.wanted ? `, and ${storeNamed(closing.offered)} keeps it in the place of the one before` : ', which alone keeps it from then on'}. The sheet is used up; a new one is shown.</p>
      <Field label="Code on the recovery sheet" mono value={code} onChange={setCode} error={wrong['recovery']} autoFocus />
      {open.error && Object.keys(wrong).length === 0 ? <Trouble {...open.error.failure} /> : null}
    </Dialog>
  );
}

import { useState } from 'react';
import type { KnownSampleView } from '../../app/contract/figures.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';

/** A known sample is no longer used. Its trials stay. */
export function WithdrawForm({ sample, onClose }: { readonly sample: KnownSampleView; readonly onClose: () => void }) {
  const [reason, setReason] = useState('');
  const withdraw = useChange('trials.withdrawSample');
  const wrong = withdraw.error?.failure.fields ?? {};
  const submit = () => { if (!withdraw.isPending) withdraw.mutate({ sampleId: sample.id, reason }, { onSuccess: onClose }); };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, withdraw.error);
  return (
    <Dialog title={`Withdraw ${sample.label}`} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={withdraw.isPending} onPress={submit}>Withdraw the sample</Button>}>
      <p>No trial can be entered for it any more. {sample.trials === 0 ? 'It has none so far.' : sample.trials === 1 ? 'Its one trial stays and counts as what the sample was said to be.' : `Its ${sample.trials} trials stay and count as what the sample was said to be.`}</p>
      <Field label="Why" lines={2} value={reason} onChange={setReason} error={wrong['reason']} autoFocus placeholder="lost, broken, known to everybody in the house, origin in doubt" />
      {withdraw.error && Object.keys(wrong).length === 0 ? <Trouble {...withdraw.error.failure} /> : null}
    </Dialog>
  );
}

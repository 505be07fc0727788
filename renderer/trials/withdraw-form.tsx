import { useState } from 'react';
import type { KnownSampleView } from '../../app/contract/figures.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Check } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';

/** A known sample is no longer used. Its trials stay. */
export function WithdrawForm({ sample, onClose }: { readonly sample: KnownSampleView; readonly onClose: () => void }) {
  const [reason, setReason] = useState('');
  const [originWrong, setOriginWrong] = useState(false);
  const withdraw = useChange('trials.withdrawSample');
  const wrong = withdraw.error?.failure.fields ?? {};
  const submit = () => { if (!withdraw.isPending) withdraw.mutate({ sampleId: sample.id, reason, originWrong }, { onSuccess: onClose }); };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, withdraw.error);
  return (
    <Dialog asks title={`Withdraw ${sample.label}`} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={withdraw.isPending} onPress={submit}>Withdraw the sample</Button>}>
      <p>No trial can be entered for it any more. {sample.trials === 0 ? 'It has none so far.' : originWrong
        ? `${sample.trials === 1 ? 'Its one trial stays in the list and counts' : `Its ${sample.trials} trials stay in the list and count`} no longer: the answer they were held against was wrong.`
        : `${sample.trials === 1 ? 'Its one trial stays and counts' : `Its ${sample.trials} trials stay and count`}: what is known of it was true when they were made.`}</p>
      <Check label="its origin was wrong: it is not what it was said to be" checked={originWrong} onChange={setOriginWrong} />
      <Field label="Why" lines={2} value={reason} onChange={setReason} error={wrong['reason']} autoFocus placeholder={originWrong ? 'the grower’s paper belongs to another stone' : 'lost, broken, known to everybody in the house'} />
      {withdraw.error && Object.keys(wrong).length === 0 ? <Trouble {...withdraw.error.failure} /> : null}
    </Dialog>
  );
}

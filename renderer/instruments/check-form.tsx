import { useState } from 'react';
import type { InstrumentView } from '../../app/contract/work.ts';
import { Button } from '../look/button.tsx';
import { Segmented } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';
import { useKey } from '../keys/keymap.ts';

/** One check of one instrument: with what, what came out, in order or not. */
export function CheckForm({ instrument, onClose }: { readonly instrument: InstrumentView; readonly onClose: () => void }) {
  const [reference, setReference] = useState('');
  const [outcome, setOutcome] = useState('');
  const [passed, setPassed] = useState<'yes' | 'no'>('yes');
  const record = useChange('instruments.recordCheck');
  const wrong = record.error?.failure.fields ?? {};
  const submit = () => { record.mutate({ instrumentId: instrument.id, passed: passed === 'yes', reference, outcome }, { onSuccess: onClose }); };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, record.error);
  return (
    <Dialog title={`Check of ${instrument.name}`} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isDisabled={record.isPending} onPress={submit}>Record the check</Button>}>
      <Field label="Checked with" value={reference} onChange={setReference} error={wrong['reference']} autoFocus placeholder="mercury lamp, polystyrene film, reference stone 3, weight 1 g F1" />
      <Field label="What came out" lines={2} value={outcome} onChange={setOutcome} error={wrong['outcome']} placeholder="546.11 nm for 546.075; residual 0.04 nm" />
      <div className="row gap12"><span className="label">In order?</span><Segmented label="In order?" value={passed} onChange={setPassed} options={[{ value: 'yes', label: 'in order' }, { value: 'no', label: 'not in order' }]} /></div>
      {passed === 'no' ? <p className="warn">Runs from now on are marked until a check passes; consider what it means for runs since the last good check.</p> : null}
      {record.error && Object.keys(wrong).length === 0 ? <Trouble {...record.error.failure} /> : null}
    </Dialog>
  );
}

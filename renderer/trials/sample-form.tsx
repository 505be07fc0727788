import { useState } from 'react';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { TRUTHS, type Truth } from '../../app/statistics/screening-figures.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';

/** A sample whose origin is known from elsewhere comes into the house's own box. */
export function SampleForm({ onClose }: { readonly onClose: () => void }) {
  const [label, setLabel] = useState('');
  const [truth, setTruth] = useState<Truth>('natural');
  const [basis, setBasis] = useState('');
  const add = useChange('trials.addSample');
  const wrong = add.error?.failure.fields ?? {};
  const submit = () => { if (!add.isPending) add.mutate({ label, truth, basis }, { onSuccess: onClose }); };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, add.error);
  return (
    <Dialog asks title="New known sample" onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={add.isPending} onPress={submit}>Add the sample</Button>}>
      <Field label="Name on its box" value={label} onChange={setLabel} error={wrong['label']} autoFocus placeholder="KS-12" />
      <Choice<Truth> label="It is" value={truth} options={TRUTHS.map((value) => ({ value, label: CONCLUSION_WORDS[value] }))} onChange={setTruth} />
      <Field label="How its origin is known" lines={3} value={basis} onChange={setBasis} error={wrong['basis']} placeholder="grown for us by an invented grower, run 41; infrared and growth structure looked at elsewhere" />
      <p className="quiet">A sample is only as good as what is known of it. It can’t be changed later; withdraw it and add it anew.</p>
      {add.error && Object.keys(wrong).length === 0 ? <Trouble {...add.error.failure} /> : null}
    </Dialog>
  );
}

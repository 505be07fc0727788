import { useState } from 'react';
import type { CheckNumber, InstrumentView } from '../../app/contract/work.ts';
import { Button } from '../look/button.tsx';
import { Check, Segmented } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { readNumber } from '../look/read-number.ts';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';
import { useKey } from '../keys/keymap.ts';

type Typed = { readonly quantity: string; readonly unit: string; readonly value: string; readonly expected: string; readonly tolerance: string };

/** What was typed as a number of the check; `measured` is null where nothing was. */
function readMeasured(typed: Typed): { readonly measured: CheckNumber | null; readonly wrong: Readonly<Record<string, string>> } {
  if (Object.values(typed).every((text) => text.trim() === '')) return { measured: null, wrong: {} };
  const [value, expected, tolerance] = [typed.value, typed.expected, typed.tolerance].map(readNumber);
  const wrong = {
    ...(typed.quantity.trim() === '' && { quantity: 'Write what was measured, the same words every time.' }),
    ...((value === undefined || Number.isNaN(value)) && { value: 'Write the number that was read.' }),
    ...(Number.isNaN(expected) && { expected: 'Write a number, or nothing.' }),
    ...((Number.isNaN(tolerance) || (tolerance ?? 1) <= 0) && { tolerance: 'Write a number above nought, or nothing.' }),
  };
  return { measured: { quantity: typed.quantity.trim(), unit: typed.unit.trim(), value: value ?? Number.NaN, expected: expected ?? null, tolerance: tolerance ?? null }, wrong };
}

/** One check of one instrument: with what, what came out, in order or not. */
export function CheckForm({ instrument, onClose }: { readonly instrument: InstrumentView; readonly onClose: () => void }) {
  const [reference, setReference] = useState('');
  const [outcome, setOutcome] = useState('');
  const [quantity, setQuantity] = useState('');
  const [unit, setUnit] = useState('');
  const [value, setValue] = useState('');
  const [expected, setExpected] = useState('');
  const [tolerance, setTolerance] = useState('');
  const [unread, setUnread] = useState<Readonly<Record<string, string>>>({});
  const [passed, setPassed] = useState<'yes' | 'no'>('yes');
  const [afterService, setAfterService] = useState(false);
  const record = useChange('instruments.recordCheck');
  const wrong = { ...record.error?.failure.fields, ...unread };
  const submit = () => {
    const read = readMeasured({ quantity, unit, value, expected, tolerance });
    setUnread(read.wrong);
    if (Object.keys(read.wrong).length === 0) record.mutate({ instrumentId: instrument.id, passed: passed === 'yes', reference, outcome, measured: read.measured, afterService }, { onSuccess: onClose });
  };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, record.error);
  return (
    <Dialog asks title={`Check of ${instrument.name}`} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={record.isPending} onPress={submit}>Record the check</Button>}>
      <Field label="Checked with" value={reference} onChange={setReference} error={wrong['reference']} autoFocus placeholder="mercury lamp, polystyrene film, reference stone 3, weight 1 g F1" />
      <Field label="What came out" lines={2} value={outcome} onChange={setOutcome} error={wrong['outcome']} placeholder="546.11 nm for 546.075; residual 0.04 nm" />
      <fieldset className="check-number">
        <legend className="label">Measured (if the check gives a number: its course is drawn under History, Figures)</legend>
        <Field label="Quantity" value={quantity} onChange={setQuantity} error={wrong['quantity']} placeholder="mercury 546.075" />
        <Field label="Value" mono value={value} onChange={setValue} error={wrong['value']} placeholder="546.11" />
        <Field label="Unit" value={unit} onChange={setUnit} error={wrong['unit']} placeholder="nm" />
        <Field label="Should be" mono value={expected} onChange={setExpected} error={wrong['expected']} placeholder="546.075" />
        <Field label="Within ±" mono value={tolerance} onChange={setTolerance} error={wrong['tolerance']} placeholder="0.1" />
      </fieldset>
      <Check label="first check after a service or a repair: the limits of its checks begin anew" checked={afterService} onChange={setAfterService} />
      <div className="row gap12"><span className="label">In order?</span><Segmented label="In order?" value={passed} onChange={setPassed} options={[{ value: 'yes', label: 'in order' }, { value: 'no', label: 'not in order' }]} /></div>
      {passed === 'no' ? <p className="warn">Runs from now on are marked until a check passes; consider what it means for runs since the last good check.</p> : null}
      {record.error && Object.keys(wrong).length === 0 ? <Trouble {...record.error.failure} /> : null}
    </Dialog>
  );
}

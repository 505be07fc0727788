import { useState } from 'react';
import { STRENGTHS, SUPPORTS, type Strength, type Supports } from '../../app/domain/finding.ts';
import { METHOD_IDS, METHODS, type MethodId } from '../../app/domain/method.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useChange } from '../queries.ts';
import { LeaveSheet } from '../look/leave-sheet.tsx';

const SUPPORTS_WORDS: Readonly<Record<Supports, string>> = {
  diamond: 'that it is diamond', 'not-diamond': 'that it is not diamond', natural: 'natural growth', grown: 'growth in a laboratory', 'grown-cvd': 'CVD growth', 'grown-hpht': 'HPHT growth', treatment: 'a treatment', none: 'nothing by itself',
};
const STRENGTH_WORDS: Readonly<Record<Strength, string>> = { diagnostic: 'diagnostic: decides alone', strong: 'strong', supporting: 'supporting', neutral: 'neutral' };

/** What an examiner saw beside the runs, with the weight they give it. */
export function AddFinding({ stoneId, onClose }: { readonly stoneId: string; readonly onClose: () => void }) {
  const [method, setMethod] = useState<MethodId>('microscopy');
  const [statement, setStatement] = useState('');
  const [strength, setStrength] = useState<Strength>('supporting');
  const [supports, setSupports] = useState<Supports>('none');
  const [caution, setCaution] = useState('');
  const [leaving, setLeaving] = useState(false);
  const add = useChange('findings.add');
  const wrong = add.error?.failure.fields ?? {};
  const submit = () => { if (!add.isPending && !leaving) add.mutate({ stoneId, method, statement, strength: supports === 'none' ? 'neutral' : strength, supports, caution }, { onSuccess: onClose }); };
  const close = () => { if (statement.trim() !== '' || caution.trim() !== '') setLeaving(true); else onClose(); };
  useKey('Mod+Enter', submit, !leaving);
  return (
    <>
      <Dialog title="An own observation" onClose={close} footer={<Button kind="main" keys="Mod+Enter" isPending={add.isPending} onPress={submit}>Add it</Button>}>
        <Field label="What was seen, in one sentence" lines={2} autoFocus value={statement} onChange={setStatement} refusal={wrong['statement']} placeholder="girdle inscription LG-0417 under 40×" />
        <div className="two-fields">
          <Choice<MethodId> label="By which method" value={method} onChange={setMethod} options={METHOD_IDS.map((m) => ({ value: m, label: METHODS[m].name }))} />
          <Choice<Supports> label="It speaks for" value={supports} onChange={setSupports} options={SUPPORTS.map((s) => ({ value: s, label: SUPPORTS_WORDS[s] }))} />
        </div>
        {supports === 'none' ? null : <Choice<Strength> label="With what weight" value={strength} onChange={setStrength} options={STRENGTHS.map((s) => ({ value: s, label: STRENGTH_WORDS[s] }))} />}
        <Field label="What it can’t say (if anything)" value={caution} onChange={setCaution} refusal={wrong['caution']} placeholder="an inscription can be copied" />
        <p className="quiet">What is written here is listed among the findings. It does not replace the diamond check, which needs a recorded run.</p>
        {add.error && Object.keys(wrong).length === 0 ? <Trouble {...add.error.failure} /> : null}
      </Dialog>
      {leaving ? <LeaveSheet onStay={() => { setLeaving(false); }} onLeave={onClose} /> : null}
    </>
  );
}

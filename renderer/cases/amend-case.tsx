import { useState } from 'react';
import type { CaseView } from '../../app/contract/cases.ts';
import { DueField } from '../intake/due-field.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';

/** What may change after the hand-over; the audit ledger keeps what stood before. */
export function AmendCase({ case: c, onClose }: { readonly case: CaseView; readonly onClose: () => void }) {
  const [asks, setAsks] = useState(c.asks);
  const [dueOn, setDueOn] = useState(c.dueOn ?? '');
  const [remarks, setRemarks] = useState(c.remarks);
  const amend = useChange('cases.amend');
  const wrong = amend.error?.failure.fields ?? {};
  const submit = () => { amend.mutate({ caseId: c.id, asks, dueOn: dueOn === '' ? null : dueOn, remarks }, { onSuccess: onClose }); };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, amend.error);
  return (
    <Dialog asks title={`Amend ${c.number}`} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={amend.isPending} onPress={submit}>Keep</Button>}>
      <Field label="The client asks" value={asks} onChange={setAsks} refusal={wrong['asks']} autoFocus />
      <DueField value={dueOn} onChange={setDueOn} error={wrong['dueOn']} />
      <Field label="Remarks" lines={4} value={remarks} onChange={setRemarks} refusal={wrong['remarks']} />
      {amend.error && Object.keys(wrong).length === 0 ? <Trouble {...amend.error.failure} /> : null}
    </Dialog>
  );
}

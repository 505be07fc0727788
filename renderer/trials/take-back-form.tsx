import { useState } from 'react';
import type { TrialView } from '../../app/contract/figures.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { showDay } from '../look/time.ts';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';

/** A trial that was entered by mistake is taken back: it stays in the list, struck through, and counts nowhere. */
export function TakeBackForm({ trial, onClose }: { readonly trial: TrialView; readonly onClose: () => void }) {
  const { laboratory } = useHouse();
  const [reason, setReason] = useState('');
  const withdraw = useChange('trials.withdraw');
  const wrong = withdraw.error?.failure.fields ?? {};
  const submit = () => { if (!withdraw.isPending) withdraw.mutate({ trialId: trial.id, reason }, { onSuccess: onClose }); };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, withdraw.error);
  return (
    <Dialog asks title={`Take back a trial of ${trial.sample}`} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={withdraw.isPending} onPress={submit}>Take the trial back</Button>}>
      <p>Concluded {showDay(trial.examinedAt, laboratory.zone)} by {trial.examiner}: {CONCLUSION_WORDS[trial.outcome]}{trial.stone === null ? '' : `, stone ${trial.stone.label} of ${trial.stone.caseNumber}`}.</p>
      <p className="quiet">For a trial that was entered by mistake, not for one whose outcome is unwelcome. It stays in the list, struck through with your reason, and is counted no longer. {trial.stone === null ? '' : 'Its stone counts as a client’s again, and can be linked to the right sample.'}</p>
      <Field label="Why" lines={2} value={reason} onChange={setReason} error={wrong['reason']} autoFocus placeholder="linked to the wrong sample; entered twice" />
      {withdraw.error && Object.keys(wrong).length === 0 ? <Trouble {...withdraw.error.failure} /> : null}
    </Dialog>
  );
}

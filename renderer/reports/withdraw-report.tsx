import { useState } from 'react';
import type { ReportRow } from '../../app/contract/report-row.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';

/** Says why a report no longer counts. Its pages stay as they were printed. */
export function WithdrawReport({ report, onClose }: { readonly report: ReportRow; readonly onClose: () => void }) {
  const [reason, setReason] = useState('');
  const withdraw = useChange('reports.withdraw');
  const notes = useNotes();
  const wrong = withdraw.error?.failure.fields?.['reason'];
  const send = () => { withdraw.mutate({ reportId: report.id, reason }, { onSuccess: (row) => { notes.say(`${row.number}, revision ${row.revision}, is withdrawn.`); onClose(); } }); };
  return (
    <Dialog asks title={`Withdraw ${report.number}, revision ${report.revision}?`} role="alertdialog" width={460} onClose={onClose}
      footer={<><Button onPress={onClose}>Keep it</Button><Button kind="danger" isPending={withdraw.isPending} onPress={send}>Withdraw it</Button></>}>
      <p>It stays in the list and prints the same, and everybody who checks it here learns that it no longer counts. This can’t be undone.</p>
      <Field label="Why it is withdrawn" lines={3} autoFocus value={reason} onChange={setReason} refusal={wrong} />
      {withdraw.error && wrong === undefined ? <Trouble {...withdraw.error.failure} /> : null}
    </Dialog>
  );
}

import type { ReportRow } from '../../../app/contract/report-row.ts';
import { useKey } from '../../keys/keymap.ts';
import { Button } from '../../look/button.tsx';
import { Dialog } from '../../look/dialog.tsx';
import { Trouble } from '../../look/empty.tsx';
import { useChange } from '../../queries.ts';

/** Asks once, then numbers and freezes the draft. */
export function IssueSheet({ draftId, words, onClose, onIssued }: { readonly draftId: string; readonly words: number; readonly onClose: () => void; readonly onIssued: (report: ReportRow) => void }) {
  const issue = useChange('reportDrafts.issue');
  const send = () => { if (!issue.isPending) issue.mutate({ draftId }, { onSuccess: onIssued }); };
  useKey('Mod+Enter', send);
  return (
    <Dialog title="Issue the report?" role="alertdialog" width={440} onClose={onClose}
      footer={<><Button onPress={onClose}>Not yet</Button><Button kind="main" keys="Mod+Enter" autoFocus isDisabled={issue.isPending} onPress={send}>{issue.isPending ? 'Issuing' : 'Issue it'}</Button></>}>
      <p>It gets its number and is frozen: its bytes are kept and always print the same. A correction is a new revision, never a change.</p>
      <p className="second">A screening result can hurt its owner if it is wrong. Read the pages one by one first.</p>
      {words > 0 ? <p className="warn">{words === 1 ? 'One word' : `${words} words`} in what you wrote should not stand there by the rules of naming: look at the notes beside the fields.</p> : null}
      {issue.error ? <Trouble {...issue.error.failure} /> : null}
    </Dialog>
  );
}

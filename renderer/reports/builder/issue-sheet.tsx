import { useState } from 'react';
import type { ReportRow } from '../../../app/contract/report-row.ts';
import type { WordRemark } from '../../../app/contract/report-drafts.ts';
import { useKey } from '../../keys/keymap.ts';
import { Button } from '../../look/button.tsx';
import { Dialog } from '../../look/dialog.tsx';
import { Trouble } from '../../look/empty.tsx';
import { Field } from '../../look/field.tsx';
import { useChange } from '../../queries.ts';
import { WordList } from './word-notes.tsx';

type Props = { readonly draftId: string; readonly words: readonly WordRemark[]; readonly onClose: () => void; readonly onIssued: (report: ReportRow) => void };

/** Asks once, then numbers and freezes the draft. Words that should not stand in it are answered for with a reason, or it is not issued. */
export function IssueSheet({ draftId, words, onClose, onIssued }: Props) {
  const issue = useChange('reportDrafts.issue');
  const [reason, setReason] = useState('');
  const answers = words.length > 0;
  const wrong = issue.error?.failure.fields?.['standing.reason'];
  const send = () => {
    if (issue.isPending) return;
    issue.mutate({ draftId, ...(answers && { standing: { words: words.map(({ word }) => word), reason } }) }, { onSuccess: onIssued });
  };
  useKey('Mod+Enter', send);
  return (
    <Dialog asks title="Issue the report?" role="alertdialog" width={answers ? 520 : 440} onClose={onClose}
      footer={<><Button onPress={onClose}>Not yet</Button><Button kind="main" keys="Mod+Enter" autoFocus={!answers} isPending={issue.isPending} onPress={send}>{issue.isPending ? 'Issuing' : 'Issue it'}</Button></>}>
      <p>It gets its number and is frozen: its bytes are kept and always print the same. A correction is a new revision, never a change.</p>
      <p className="second">A screening result can hurt its owner if it is wrong. Read the pages one by one first.</p>
      {answers ? <>
        <p className="warn">{words.length === 1 ? 'One word' : `${words.length} words`} in this report should not stand there by the rules of naming:</p>
        <WordList words={words} />
        <Field label={words.length === 1 ? 'Why it is to stand' : 'Why they are to stand'} hint="Kept in the audit ledger under your name." lines={2} autoFocus value={reason} onChange={setReason} refusal={wrong} />
      </> : null}
      {issue.error && wrong === undefined ? <Trouble {...issue.error.failure} /> : null}
    </Dialog>
  );
}

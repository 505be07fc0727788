import { useState } from 'react';
import type { CaseView } from '../../app/contract/cases.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { useAsk, useChange } from '../queries.ts';
import { useSavedPdf } from '../use-saved-pdf.ts';
import { NewReport } from '../reports/builder/new-report.tsx';
import { IssuedReports } from './issued-reports.tsx';
import './cases.css';

/** More would push the report's own buttons out of sight. */
const SHOWN_AT_ONCE = 8;

function Missing({ sentences }: { readonly sentences: readonly string[] }) {
  const rest = sentences.slice(SHOWN_AT_ONCE);
  return (
    <div>
      <p>Before it can be issued:</p>
      <ul className="missing">{sentences.slice(0, SHOWN_AT_ONCE).map((m) => <li key={m}>{m}</li>)}</ul>
      {rest.length > 0 ? <details className="missing-rest"><summary>{rest.length} more</summary><ul className="missing">{rest.map((m) => <li key={m}>{m}</li>)}</ul></details> : null}
    </div>
  );
}

/** The report of the case: what is still missing, a draft to read, the issue, and what was issued. */
export function ReportMargin({ case: c }: { readonly case: CaseView }) {
  const prepared = useAsk('reports.prepare', { caseId: c.id }, { keep: true });
  const preview = useSavedPdf('reports.preview');
  const issue = useChange('reports.issue');
  const pdf = useChange('reports.pdf');
  const notes = useNotes();
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState('');
  const issued = useAsk('reports.list', { caseId: c.id });
  const standing = issued.data?.find((r) => r.state === 'issued' && r.subject === c.number);
  const draft = () => { preview.save({ caseId: c.id }); };
  const save = (reportId: string) => { pdf.mutate({ reportId }, { onSuccess: (p) => { saveFile(p.name, 'application/pdf', p.pdf); }, onError: (e) => { notes.complain(e.failure); } }); };
  const print = () => {
    issue.mutate({ caseId: c.id, reason }, { onSuccess: (r) => { setAsking(false); setReason(''); notes.say(`${r.number}, revision ${r.revision}, is issued and frozen.`); save(r.id); } });
  };
  const missing = prepared.data?.missing ?? [];
  const [beginning, setBeginning] = useState(false);
  useKey('D', draft);
  useKey('Mod+Enter', () => {
    if (missing.length > 0) notes.complain({ message: `It can’t be issued yet: ${missing[0]}`, next: missing.length === 1 ? 'This one point is open.' : `${missing.length} points are open; they stand at the right.` });
    else if (prepared.data && !issue.isPending) setAsking(true);
  }, !asking);
  useKey('Mod+Enter', () => { if (!issue.isPending) print(); }, asking);
  useKey('R', () => { setBeginning(true); });
  const differing = c.parcels.flatMap((p) => p.items).filter((i) => i.custody.differs);
  return (
    <aside className="case-margin">
      <p className="label">Report</p>
      <IssuedReports reports={issued.data ?? []} caseNumber={c.number} onSave={save} />
      {prepared.isPending ? <Working what="Looking what is missing" /> : null}
      {prepared.isError ? <Trouble {...prepared.error.failure} /> : null}
      {missing.length > 0 ? (
        <Missing sentences={missing} />
      ) : prepared.data ? <p className="second">Nothing is missing. {standing ? `Issuing again makes revision ${standing.revision + 1} of ${standing.number}.` : ''}</p> : null}
      <div className="stack gap8">
        <Button keys="R" onPress={() => { setBeginning(true); }}>New report</Button>
        <Button keys="D" isPending={preview.isPending} onPress={draft}>{preview.isPending ? 'Drawing the pages' : 'Save a draft, PDF'}</Button>
        <Button kind="main" keys="Mod+Enter" isDisabled={missing.length > 0 || issue.isPending || !prepared.data} onPress={() => { setAsking(true); }}>{issue.isPending ? 'Issuing' : 'Issue the report'}</Button>
      </div>
      {beginning ? <NewReport caseId={c.id} onClose={() => { setBeginning(false); }} /> : null}
      {asking ? (
        <Dialog asks title="Issue the report?" role="alertdialog" width={440} onClose={() => { setAsking(false); }} footer={<><Button onPress={() => { setAsking(false); }}>Not yet</Button><Button kind="main" keys="Mod+Enter" autoFocus={!standing} isPending={issue.isPending} onPress={print}>Issue it</Button></>}>
          {differing.length > 0 ? <p className="warn">A weight of {differing.map((i) => i.label).join(', ')} differed by more than the tolerance: find out why before you issue.</p> : null}
          {standing ? <Field label={`Why revision ${standing.revision} of ${standing.number} is amended`} lines={2} autoFocus value={reason} onChange={setReason} hint="Printed on the new revision, with what differs." /> : null}
          {issue.error ? <Trouble {...issue.error.failure} /> : null}
          <p>It gets its number and is frozen: its bytes are kept and always print the same. A correction is a new revision, never a change.</p>
          <p className="second">A screening result can hurt its owner if it is wrong. Read the draft page by page first.</p>
        </Dialog>
      ) : null}
    </aside>
  );
}

import { useState } from 'react';
import { REPORT_STATE_WORDS, type ReportRow } from '../../app/contract/report-row.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { DataTable, type Column } from '../look/data-table.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { FilterBox } from '../look/filter-box.tsx';
import { Segmented } from '../look/choice.tsx';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { showDay, showMoment } from '../look/time.ts';
import { useAsk, useChange } from '../queries.ts';
import { go } from '../router.ts';
import { View } from '../shell/view.tsx';
import { DraftList } from './builder/draft-list.tsx';
import { NewReport } from './builder/new-report.tsx';
import { listReports, type Shown } from './list-reports.ts';
import { WithdrawReport } from './withdraw-report.tsx';
import { useMay } from '../people/use-may.ts';
import './builder/builder.css';

/** Reports in the making, and issued ones: frozen bytes, printed again as they were. */
export default function ReportsView() {
  const { laboratory } = useHouse();
  const mayWrite = useMay('reportDrafts.create');
  const mayWithdraw = useMay('reports.withdraw');
  const reports = useAsk('reports.list', { caseId: null });
  const drafts = useAsk('reportDrafts.list', { caseId: null });
  const create = useChange('reportDrafts.create');
  const pdf = useChange('reports.pdf');
  const notes = useNotes();
  const [withdrawing, setWithdrawing] = useState<ReportRow | null>(null);
  const check = () => { go({ view: 'check' }); };
  useKey('F', check);
  const [text, setText] = useState('');
  const [shown, setShown] = useState<Shown>('all');
  const [beginning, setBeginning] = useState(false);
  useKey('N', () => { setBeginning(true); }, !beginning && mayWrite);
  const amend = (report: ReportRow) => { create.mutate({ amends: report.id }, { onSuccess: ({ draftId }) => { go({ view: 'report', id: draftId }); }, onError: (e) => { notes.complain(e.failure); } }); };
  const rows = listReports(reports.data ?? [], text, shown);
  const columns: readonly Column<(typeof rows)[number]>[] = [
    { key: 'number', head: 'Report', width: '104px', mono: true, cell: (r) => <span className={r.older ? 'quiet report-older' : ''} title={`SHA-256 of the PDF: ${r.pdfSha256}`}>{r.number}</span>, sort: (r) => r.number },
    { key: 'revision', head: 'Rev.', width: '40px', align: 'right', mono: true, cell: (r) => r.revision, sort: (r) => r.revision },
    { key: 'state', head: 'State', width: '88px', cell: (r) => <span className={r.state === 'withdrawn' ? 'warn' : r.state === 'superseded' ? 'quiet' : ''} title={r.withdrawn?.reason ?? r.reason}>{REPORT_STATE_WORDS[r.state]}</span>, sort: (r) => r.state },
    { key: 'subject', head: 'On', width: 'minmax(56px, 0.7fr)', mono: true, cell: (r) => <span title={`${r.subject}, ${r.stones} ${r.stones === 1 ? 'stone' : 'stones'}`}>{r.subject === r.caseNumber ? 'case' : r.subject}</span>, sort: (r) => r.subject },
    { key: 'case', head: 'Case', width: '104px', mono: true, cell: (r) => r.caseNumber, sort: (r) => r.caseNumber },
    { key: 'client', head: 'Client', width: 'minmax(110px, 2fr)', cell: (r) => <span title={r.clientName}>{r.clientName}</span>, sort: (r) => r.clientName },
    { key: 'issued', head: 'Issued', width: '92px', mono: true, cell: (r) => <span title={showMoment(r.issuedAt, laboratory.zone)}>{showDay(r.issuedAt, laboratory.zone)}</span>, sort: (r) => r.issuedAt },
    { key: 'by', head: 'By', width: 'minmax(84px, 1fr)', cell: (r) => <span title={r.issuedBy}>{r.issuedBy}</span>, sort: (r) => r.issuedBy },
    { key: 'save', head: '', width: '232px', align: 'right', cell: (r) => (
      <span onClick={(e) => { e.stopPropagation(); }}>
        {r.state === 'issued' && mayWrite ? <Button kind="quiet" aria-label={`Amend ${r.number}, revision ${r.revision}`} isPending={create.isPending} onPress={() => { amend(r); }}>Amend</Button> : null}
        {r.state === 'issued' && mayWithdraw ? <Button kind="quiet" aria-label={`Withdraw ${r.number}, revision ${r.revision}`} onPress={() => { setWithdrawing(r); }}>Withdraw</Button> : null}
        <Button kind="quiet" onPress={() => { pdf.mutate({ reportId: r.id }, { onSuccess: (p) => { saveFile(p.name, 'application/pdf', p.pdf); }, onError: (e) => { notes.complain(e.failure); } }); }}>Save PDF</Button>
      </span>
    ) },
  ];
  return (
    <View over="Issued reports stay as they were printed" title="Reports" actions={<><Button keys="F" onPress={check}>Check a report</Button>{mayWrite ? <Button kind="main" keys="N" onPress={() => { setBeginning(true); }}>New report</Button> : null}</>}>
      <div className="page page-sheet">
        {reports.isError ? <Trouble {...reports.error.failure} /> : null}
        {reports.isPending ? <Working what="Reading the reports" /> : null}
        {drafts.data && drafts.data.length > 0 ? <section className="report-drafts" aria-label="Drafts"><h2>In the making</h2><DraftList drafts={drafts.data} /></section> : null}
        {reports.data && reports.data.length > 0 ? (
          <div className="row gap12">
            <FilterBox label="Number, case, client, stone" value={text} onChange={setText} />
            <Segmented label="Shown" value={shown} onChange={setShown} options={[{ value: 'all', label: 'every revision' }, { value: 'issued', label: 'those that stand' }, { value: 'withdrawn', label: 'withdrawn' }]} />
          </div>
        ) : null}
        {reports.data ? <div className="report-issued"><DataTable label="Reports" rows={rows} columns={columns} rowKey={(r) => r.id} rowHeight={41} onOpen={(r) => { go({ view: 'case', id: r.caseId }); }}
          empty={reports.data.length > 0 ? <Empty title="No report fits"><p>Clear the filter to see the others.</p></Empty> : <Empty title="No report issued yet"><p>Press N to build one on a stone, a piece, a lot or a whole case. It can be issued once its stones are concluded and confirmed.</p></Empty>} /></div> : null}
        {beginning ? <NewReport onClose={() => { setBeginning(false); }} /> : null}
        {withdrawing ? <WithdrawReport report={withdrawing} onClose={() => { setWithdrawing(null); }} /> : null}
      </div>
    </View>
  );
}

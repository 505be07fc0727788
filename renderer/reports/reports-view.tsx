import { useState } from 'react';
import { REPORT_STATE_WORDS, type ReportRow } from '../../app/contract/report-row.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { DataTable, type Column } from '../look/data-table.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { showMoment } from '../look/time.ts';
import { useAsk, useChange } from '../queries.ts';
import { go } from '../router.ts';
import { View } from '../shell/view.tsx';
import { WithdrawReport } from './withdraw-report.tsx';

/** Issued reports: frozen bytes, printed again as they were. */
export default function ReportsView() {
  const { laboratory } = useHouse();
  const reports = useAsk('reports.list', { caseId: null });
  const pdf = useChange('reports.pdf');
  const notes = useNotes();
  const [withdrawing, setWithdrawing] = useState<ReportRow | null>(null);
  const check = () => { go({ view: 'check' }); };
  useKey('F', check);
  const columns: readonly Column<ReportRow>[] = [
    { key: 'number', head: 'Report', width: '104px', mono: true, cell: (r) => <span title={`SHA-256 of the PDF: ${r.pdfSha256}`}>{r.number}</span>, sort: (r) => r.number },
    { key: 'revision', head: 'Revision', width: '64px', align: 'right', mono: true, cell: (r) => r.revision, sort: (r) => r.revision },
    { key: 'state', head: 'State', width: '88px', cell: (r) => <span className={r.state === 'withdrawn' ? 'warn' : r.state === 'superseded' ? 'quiet' : ''} title={r.withdrawn?.reason ?? r.reason}>{REPORT_STATE_WORDS[r.state]}</span>, sort: (r) => r.state },
    { key: 'case', head: 'Case', width: '104px', mono: true, cell: (r) => r.caseNumber, sort: (r) => r.caseNumber },
    { key: 'client', head: 'Client', width: 'minmax(110px, 2fr)', cell: (r) => <span title={r.clientName}>{r.clientName}</span>, sort: (r) => r.clientName },
    { key: 'stones', head: 'Stones', width: '56px', align: 'right', mono: true, cell: (r) => r.stones, sort: (r) => r.stones },
    { key: 'issued', head: 'Issued', width: '136px', mono: true, cell: (r) => showMoment(r.issuedAt, laboratory.zone), sort: (r) => r.issuedAt },
    { key: 'by', head: 'By', width: 'minmax(84px, 1fr)', cell: (r) => <span title={r.issuedBy}>{r.issuedBy}</span>, sort: (r) => r.issuedBy },
    { key: 'save', head: '', width: '172px', align: 'right', cell: (r) => (
      <span onClick={(e) => { e.stopPropagation(); }}>
        {r.state === 'issued' ? <Button kind="quiet" aria-label={`Withdraw ${r.number}, revision ${r.revision}`} onPress={() => { setWithdrawing(r); }}>Withdraw</Button> : null}
        <Button kind="quiet" onPress={() => { pdf.mutate({ reportId: r.id }, { onSuccess: (p) => { saveFile(p.name, 'application/pdf', p.pdf); }, onError: (e) => { notes.complain(e.failure); } }); }}>Save PDF</Button>
      </span>
    ) },
  ];
  return (
    <View over="Issued reports stay as they were printed" title="Reports" actions={<Button keys="F" onPress={check}>Check a report</Button>}>
      <div className="page page-sheet">
        {reports.isError ? <Trouble {...reports.error.failure} /> : null}
        {reports.isPending ? <Working what="Reading the reports" /> : null}
        {reports.data ? <DataTable label="Reports" rows={reports.data} columns={columns} rowKey={(r) => r.id} rowHeight={41} onOpen={(r) => { go({ view: 'case', id: r.caseId }); }}
          empty={<Empty title="No report issued yet"><p>When every stone of a case is concluded and confirmed, issue its report from the case.</p></Empty>} /> : null}
        {withdrawing ? <WithdrawReport report={withdrawing} onClose={() => { setWithdrawing(null); }} /> : null}
      </div>
    </View>
  );
}

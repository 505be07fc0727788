import type { DraftRow } from '../../../app/contract/report-drafts.ts';
import { TEMPLATE_KIND_WORDS } from '../../../app/report/sections/section.ts';
import { useHouse } from '../../house/house-context.tsx';
import { DataTable, type Column } from '../../look/data-table.tsx';
import { Empty } from '../../look/empty.tsx';
import { showMoment } from '../../look/time.ts';
import { go } from '../../router.ts';

/** Reports in the making; the row opens its draft. */
export function DraftList({ drafts }: { readonly drafts: readonly DraftRow[] }) {
  const { laboratory } = useHouse();
  const columns: readonly Column<DraftRow>[] = [
    { key: 'state', head: 'State', width: '96px', cell: (d) => (d.amends ? 'amendment' : 'draft'), sort: (d) => (d.amends ? 1 : 0) },
    { key: 'subject', head: 'On', width: 'minmax(56px, 0.7fr)', mono: true, cell: (d) => (d.subjectId === null ? 'case' : d.subject), sort: (d) => d.subject },
    { key: 'case', head: 'Case', width: '104px', mono: true, cell: (d) => d.caseNumber, sort: (d) => d.caseNumber },
    { key: 'client', head: 'Client', width: 'minmax(120px, 2fr)', cell: (d) => <span title={d.clientName}>{d.clientName}</span>, sort: (d) => d.clientName },
    { key: 'kind', head: 'Kind', width: '112px', cell: (d) => TEMPLATE_KIND_WORDS[d.kind], sort: (d) => d.kind },
    { key: 'title', head: 'Title', width: 'minmax(140px, 3fr)', cell: (d) => <span title={d.title}>{d.title}</span>, sort: (d) => d.title },
    { key: 'at', head: 'Last written', width: '136px', mono: true, cell: (d) => showMoment(d.updatedAt, laboratory.zone), sort: (d) => d.updatedAt },
    { key: 'by', head: 'By', width: 'minmax(84px, 1fr)', cell: (d) => <span title={d.by}>{d.by}</span>, sort: (d) => d.by },
  ];
  return (
    <DataTable label="Drafts" rows={drafts} columns={columns} rowKey={(d) => d.id} rowHeight={41} onOpen={(d) => { go({ view: 'report', id: d.id }); }}
      empty={<Empty title="No draft"><p>Press N to begin a report on a stone, a piece, a lot or a whole case.</p></Empty>} />
  );
}

import { useState } from 'react';
import type { CaseRow } from '../../app/contract/cases.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { Segmented } from '../look/choice.tsx';
import { DataTable, type Column } from '../look/data-table.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { FilterBox } from '../look/filter-box.tsx';
import { showDate, showDay } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { go } from '../router.ts';
import { View } from '../shell/view.tsx';

const MOST_ROWS = 100_000;
const isLate = (r: CaseRow, today: string) => r.state === 'open' && r.dueOn !== null && r.dueOn < today;
type State = 'all' | 'open' | 'reported' | 'returned';

/** Every case, newest first; narrowed by words and by state. A text after #/cases/ narrows from elsewhere. */
export default function CasesView() {
  const { laboratory } = useHouse();
  const [text, setText] = useState(() => decodeURIComponent(window.location.hash.split('/')[2] ?? ''));
  const [state, setState] = useState<State>('all');
  const today = useAsk('bench.today', {}, { keep: true }).data?.today;
  const cases = useAsk('cases.list', { text, state, limit: MOST_ROWS }, { keep: true });
  const columns: readonly Column<CaseRow>[] = [
    { key: 'number', head: 'Case', width: '104px', mono: true, cell: (r) => r.number, sort: (r) => r.number },
    { key: 'client', head: 'Client', width: 'minmax(140px, 1.4fr)', cell: (r) => <span title={r.clientName}>{r.clientName}</span>, sort: (r) => r.clientName },
    { key: 'summary', head: 'What', width: 'minmax(150px, 2.4fr)', cell: (r) => <span className="second" title={r.summary}>{r.summary}</span> },
    { key: 'next', head: 'Next', width: 'minmax(130px, 1.2fr)', cell: (r) => <span className="two-lines" title={r.next}>{r.next}</span>, sort: (r) => r.next },
    { key: 'stones', head: 'Confirmed', width: '76px', align: 'right', mono: true, cell: (r) => `${r.confirmed} / ${r.stones}`, sort: (r) => (r.stones === 0 ? 1 : r.confirmed / r.stones) },
    { key: 'received', head: 'Received', width: '92px', mono: true, cell: (r) => showDay(r.receivedAt, laboratory.zone), sort: (r) => r.receivedAt },
    { key: 'due', head: 'Due', width: '92px', mono: true, cell: (r) => <span className={today !== undefined && isLate(r, today) ? 'warn' : ''}>{r.dueOn === null ? '–' : showDate(r.dueOn)}</span>, sort: (r) => r.dueOn ?? '9999' },
    { key: 'place', head: 'Where', width: 'minmax(90px, 0.8fr)', cell: (r) => <span title={r.place}>{r.place}</span>, sort: (r) => r.place },
  ];
  return (
    <View over={cases.data ? `${cases.data.total.toLocaleString('en')} in the casebook` : ' '} title="Cases" actions={(
      <>
        <FilterBox label="Number, client, description, remark" value={text} onChange={setText} />
        <Segmented<State> label="State" value={state} onChange={setState} options={[{ value: 'all', label: 'all' }, { value: 'open', label: 'open' }, { value: 'reported', label: 'reported' }, { value: 'returned', label: 'returned' }]} />
        <Button kind="main" keys="N" onPress={() => { go({ view: 'intake' }); }}>Take in a case</Button>
      </>
    )}>
      <div className="page page-sheet">
        {cases.isError ? <Trouble {...cases.error.failure} /> : null}
        {cases.isPending ? <Working what="Reading the cases" /> : null}
        {cases.data ? (
          <DataTable label="Cases" rows={cases.data.rows} columns={columns} rowKey={(r) => r.id} onOpen={(r) => { go({ view: 'case', id: r.id }); }}
            empty={text || state !== 'all'
              ? <Empty title="No case fits"><p>Change the words or the state above.</p></Empty>
              : <Empty title="No case yet"><p>Press N to take in the first one.</p></Empty>} />
        ) : null}
      </div>
    </View>
  );
}

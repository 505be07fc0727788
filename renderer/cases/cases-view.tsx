import { useState } from 'react';
import type { CaseRow } from '../../app/contract/cases.ts';
import type { CaseSort } from '../../app/contract/list-page.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { Segmented } from '../look/choice.tsx';
import { PagedTable } from '../look/paged-table.tsx';
import type { Column, Order } from '../look/table-view.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { FilterBox } from '../look/filter-box.tsx';
import { showDate, showDay } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { go } from '../router.ts';
import { View } from '../shell/view.tsx';
import { usePages } from '../use-pages.ts';

const isLate = (r: CaseRow, today: string) => r.state === 'open' && r.dueOn !== null && r.dueOn < today;
type State = 'all' | 'open' | 'reported' | 'returned';

/** Every case, newest first; narrowed by words and by state. A text after #/cases/ narrows from elsewhere. */
export default function CasesView() {
  const { laboratory } = useHouse();
  const [text, setText] = useState(() => decodeURIComponent(window.location.hash.split('/')[2] ?? ''));
  const [state, setState] = useState<State>('all');
  const today = useAsk('bench.today', {}, { keep: true }).data?.today;
  const [sort, setSort] = useState<Order<CaseSort> | null>(null);
  const cases = usePages('cases.list', { text, state, sort });
  const columns: readonly Column<CaseRow>[] = [
    { key: 'number', head: 'Case', width: '104px', mono: true, cell: (r) => r.number, sort: true },
    { key: 'client', head: 'Client', width: 'minmax(140px, 1.4fr)', cell: (r) => <span title={r.clientName}>{r.clientName}</span>, sort: true },
    { key: 'summary', head: 'What', width: 'minmax(150px, 2.4fr)', cell: (r) => <span className="second" title={r.summary}>{r.summary}</span> },
    { key: 'next', head: 'Next', width: 'minmax(130px, 1.2fr)', cell: (r) => <span className="two-lines" title={r.next}>{r.next}</span>, sort: true },
    { key: 'stones', head: 'Confirmed', width: '76px', align: 'right', mono: true, cell: (r) => `${r.confirmed} / ${r.stones}`, sort: true },
    { key: 'received', head: 'Received', width: '92px', mono: true, cell: (r) => showDay(r.receivedAt, laboratory.zone), sort: true },
    { key: 'due', head: 'Due', width: '92px', mono: true, cell: (r) => <span className={today !== undefined && isLate(r, today) ? 'warn' : ''}>{r.dueOn === null ? '–' : showDate(r.dueOn)}</span>, sort: true },
    { key: 'place', head: 'Where', width: 'minmax(90px, 0.8fr)', cell: (r) => <span title={r.place}>{r.place}</span>, sort: true },
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
        {cases.error ? <Trouble {...cases.error.failure} /> : null}
        {cases.isPending ? <Working what="Reading the cases" /> : null}
        {cases.data ? (
          <PagedTable label="Cases" pages={cases.data} columns={columns} order={sort} onOrder={setSort} onOpen={(r) => { go({ view: 'case', id: r.id }); }}
            empty={text || state !== 'all'
              ? <Empty title="No case fits"><p>Change the words or the state above.</p></Empty>
              : <Empty title="No case yet"><p>Press N to take in the first one.</p></Empty>} />
        ) : null}
      </div>
    </View>
  );
}

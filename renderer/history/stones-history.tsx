import { useState, type ReactNode } from 'react';
import type { HistoryRow } from '../../app/contract/history.ts';
import type { HistorySort } from '../../app/contract/list-page.ts';
import { COLOUR_CLASS_WORDS } from '../../app/domain/colour-class.ts';
import { formatCarat } from '../../app/domain/weight.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { PagedTable } from '../look/paged-table.tsx';
import type { Column, Order } from '../look/table-view.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { FilterBox } from '../look/filter-box.tsx';
import { Glyph } from '../look/glyph.tsx';
import { showDay } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { go } from '../router.ts';
import { View } from '../shell/view.tsx';
import { usePages } from '../use-pages.ts';
import { colourShort } from '../stones/colour-short.ts';
import { conclusionWords } from '../stones/conclusion-words.ts';
import { shownConclusion } from '../stones/shown-conclusion.ts';
import { STAGE_WORDS } from '../stones/stage-words.ts';
import { FilterStrip } from './filter-strip.tsx';
import { isUnfiltered, useHistoryFilter } from './history-filter.ts';
import { useHistoryCsv } from './use-history-csv.ts';

const inWords = (r: HistoryRow): string => conclusionWords(r, 'open');
/** "confirmed, sent further, disagreement": where it stands, and what happened on the way. */
const stageWords = (r: HistoryRow): string => [STAGE_WORDS[r.stage], r.sentFurther ? 'sent further' : '', r.disagreed && r.stage !== 'disagreed' ? 'disagreement' : ''].filter(Boolean).join(', ');

/** Every stone that was ever here, narrowed by words and by what is known of it. */
export function StonesHistory({ choose }: { readonly choose: ReactNode }) {
  const { laboratory } = useHouse();
  const [filter, change] = useHistoryFilter();
  const choices = useAsk('history.choices', {}, { keep: true });
  const [sort, setSort] = useState<Order<HistorySort> | null>(null);
  const stones = usePages('history.stones', { ...filter, sort });
  const found = stones.data;
  const columns: readonly Column<HistoryRow>[] = [
    { key: 'case', head: 'Case', width: '104px', mono: true, cell: (r) => r.caseNumber, sort: true },
    { key: 'label', head: 'Stone', width: '56px', mono: true, cell: (r) => r.label, sort: true },
    { key: 'received', head: 'Received', width: '92px', mono: true, cell: (r) => showDay(r.receivedAt, laboratory.zone), sort: true },
    { key: 'client', head: 'Client', width: 'minmax(120px, 1.1fr)', cell: (r) => <span title={r.clientName}>{r.clientName}</span>, sort: true },
    { key: 'conclusion', head: 'Conclusion', width: 'minmax(180px, 2.4fr)', cell: (r) => <span className="row gap8"><Glyph of={shownConclusion(r)} /><span className="two-lines" title={inWords(r)}>{inWords(r)}</span></span>, sort: true },
    { key: 'stage', head: 'Stage', width: 'minmax(110px, 1.2fr)', cell: (r) => <span className="two-lines" title={stageWords(r)}>{stageWords(r)}</span>, sort: true },
    { key: 'people', head: 'Concluded, answered', width: 'minmax(120px, 1.2fr)', cell: (r) => <span className="two-lines" title={`${r.concludedBy}, ${r.confirmedBy}`}>{[r.concludedBy, r.confirmedBy].filter(Boolean).join(', ')}</span>, sort: true },
    { key: 'colour', head: 'Colour class', width: 'minmax(84px, 0.7fr)', cell: (r) => <span title={COLOUR_CLASS_WORDS[r.colourClass]}>{colourShort(r.colourClass)}</span>, sort: true },
    { key: 'weight', head: 'Carat', width: '62px', align: 'right', mono: true, cell: (r) => (r.weight === null ? (r.mounted ? 'mounted' : '–') : formatCarat(r.weight)), sort: true },
  ];
  const csv = useHistoryCsv(laboratory.zone);
  return (
    <View over={found ? `${found.total.toLocaleString('en')} ${found.total === 1 ? 'stone' : 'stones'}${isUnfiltered(filter) ? ' in the casebook' : found.total === 1 ? ' fits' : ' fit'}` : ' '} title="History" actions={(
      <>
        {choose}
        <FilterBox label="Number, client, finding, reason" value={filter.text} onChange={(text) => { change({ text }); }} />
        <Button isDisabled={!found || found.total === 0} isPending={csv.isPending} onPress={() => { csv.save({ ...filter, sort }); }}>{csv.isPending ? `Writing ${csv.written.toLocaleString('en')}` : 'Save as CSV'}</Button>
      </>
    )}>
      <div className="page page-sheet history-page">
        <FilterStrip filter={filter} change={change} choices={choices.data} />
        {stones.error ? <Trouble {...stones.error.failure} /> : null}
        {stones.isPending ? <Working what="Looking through the history" /> : null}
        {found ? (
          <div className="history-list">
            <PagedTable label="History" pages={found} columns={columns} order={sort} onOrder={setSort} rowHeight={41} onOpen={(r) => { go({ view: 'stone', id: r.id }); }}
              empty={isUnfiltered(filter)
                ? <Empty title="No stone yet"><p>Stones come in with a case: press N.</p></Empty>
                : <Empty title="No stone fits"><p>Widen the period or take back one of the choices above.</p></Empty>} />
          </div>
        ) : null}
      </div>
    </View>
  );
}

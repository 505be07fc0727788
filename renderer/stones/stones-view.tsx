import { useState } from 'react';
import type { Output } from '../../app/contract/index.ts';
import type { StoneSort } from '../../app/contract/list-page.ts';
import { COLOUR_CLASS_WORDS } from '../../app/domain/colour-class.ts';
import { formatCarat } from '../../app/domain/weight.ts';
import { PagedTable } from '../look/paged-table.tsx';
import type { Column, Order } from '../look/table-view.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { FilterBox } from '../look/filter-box.tsx';
import { Glyph } from '../look/glyph.tsx';
import { go } from '../router.ts';
import { View } from '../shell/view.tsx';
import { usePages } from '../use-pages.ts';
import { colourShort } from './colour-short.ts';
import { conclusionWords } from './conclusion-words.ts';
import { shownConclusion } from './shown-conclusion.ts';
import { STAGE_WORDS } from './stage-words.ts';

type Row = Output<'stones.list'>['rows'][number];

const COLUMNS: readonly Column<Row>[] = [
  { key: 'case', head: 'Case', width: '104px', mono: true, cell: (r) => r.caseNumber, sort: true },
  { key: 'label', head: 'Stone', width: '56px', mono: true, cell: (r) => r.label, sort: true },
  { key: 'conclusion', head: 'Conclusion', width: 'minmax(200px, 2.8fr)', cell: (r) => <span className="row gap8"><Glyph of={shownConclusion(r)} /><span className="two-lines" title={r.stage === 'open' ? undefined : conclusionWords(r, 'open')}>{conclusionWords(r, 'open')}</span></span>, sort: true },
  { key: 'stage', head: 'Stage', width: 'minmax(100px, 1.2fr)', cell: (r) => <span className="two-lines" title={STAGE_WORDS[r.stage]}>{STAGE_WORDS[r.stage]}</span>, sort: true },
  { key: 'weight', head: 'Carat', width: '64px', align: 'right', mono: true, cell: (r) => (r.weight === null ? (r.mounted ? 'mounted' : '–') : formatCarat(r.weight)), sort: true },
  { key: 'colour', head: 'Colour class', width: 'minmax(96px, 0.8fr)', cell: (r) => <span title={COLOUR_CLASS_WORDS[r.colourClass]}>{colourShort(r.colourClass)}</span>, sort: true },
  { key: 'declared', head: 'Declared', width: 'minmax(120px, 1.2fr)', cell: (r) => <span className="second" title={r.declared}>{r.declared}</span> },
  { key: 'client', head: 'Client', width: 'minmax(110px, 1.1fr)', cell: (r) => <span title={r.clientName}>{r.clientName}</span>, sort: true },
  { key: 'runs', head: 'Runs', width: '40px', align: 'right', mono: true, cell: (r) => r.runs, sort: true },
];

/** Every stone of every case. */
export default function StonesView() {
  const [text, setText] = useState('');
  const [sort, setSort] = useState<Order<StoneSort> | null>(null);
  const stones = usePages('stones.list', { text, sort });
  return (
    <View over={stones.data ? `${stones.data.total.toLocaleString('en')} in the casebook` : ' '} title="Stones" actions={<FilterBox label="Case, stone, client, description" value={text} onChange={setText} />}>
      <div className="page page-sheet">
        {stones.error ? <Trouble {...stones.error.failure} /> : null}
        {stones.isPending ? <Working what="Reading the stones" /> : null}
        {stones.data ? (
          <PagedTable label="Stones" pages={stones.data} columns={COLUMNS} order={sort} onOrder={setSort} onOpen={(r) => { go({ view: 'stone', id: r.id }); }}
            empty={<Empty title={text ? 'No stone fits' : 'No stone yet'}><p>{text ? 'Change the words above.' : 'Stones come in with a case: press N.'}</p></Empty>} />
        ) : null}
      </div>
    </View>
  );
}

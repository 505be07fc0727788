import type { Output } from '../../app/contract/index.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { DataTable, type Column } from '../look/data-table.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { showDay } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { go } from '../router.ts';
import { sizeWords } from '../runs/incoming-file.ts';
import { View } from '../shell/view.tsx';
import { KEPT_WORDS } from './kept-words.ts';

/** Bundles of other laboratories that are kept here as they came. */
export default function BundlesView() {
  const { laboratory } = useHouse();
  const bundles = useAsk('bundles.list', {});
  const check = () => { go({ view: 'check' }); };
  useKey('F', check);
  useKey('Escape', check);
  const columns: readonly Column<Output<'bundles.list'>[number]>[] = [
    { key: 'laboratory', head: 'Laboratory', width: 'minmax(160px, 2fr)', cell: (r) => <span title={r.summary.laboratory}>{r.summary.laboratory}</span>, sort: (r) => r.summary.laboratory },
    { key: 'what', head: 'Holds', width: 'minmax(150px, 1.4fr)', mono: true, cell: (r) => <span title={r.summary.cases.join(', ')}>{r.summary.cases.length === 1 ? r.summary.cases[0] : `${r.summary.cases.length} cases`}</span>, sort: (r) => r.summary.cases.length },
    { key: 'verdict', head: 'Judged', width: '200px', cell: (r) => <span title={r.checkedHow}>{KEPT_WORDS[r.verdict]}</span>, sort: (r) => r.verdict },
    { key: 'against', head: 'Beside others', width: '110px', cell: (r) => (r.contradicts > 0 ? <span className="warn">contradicts</span> : null), sort: (r) => r.contradicts },
    { key: 'taken', head: 'Taken in', width: '100px', mono: true, cell: (r) => showDay(r.takenAt, laboratory.zone), sort: (r) => r.takenAt },
    { key: 'by', head: 'By', width: 'minmax(100px, 1fr)', cell: (r) => <span title={r.takenBy}>{r.takenBy}</span>, sort: (r) => r.takenBy },
    { key: 'size', head: 'Size', width: '90px', align: 'right', mono: true, cell: (r) => sizeWords(r.size), sort: (r) => r.size },
  ];
  return (
    <View over="Kept as they came, apart from the cases of this laboratory" title="Bundles of other laboratories" actions={<Button keys="F" onPress={check}>Check a bundle</Button>}>
      <div className="page page-sheet">
        {bundles.isError ? <Trouble {...bundles.error.failure} /> : null}
        {bundles.isPending ? <Working what="Reading the bundles" /> : null}
        {bundles.data ? <DataTable label="Bundles" rows={bundles.data} columns={columns} rowKey={(r) => r.id} onOpen={(r) => { go({ view: 'bundle', id: r.id }); }}
          empty={<Empty title="None taken in yet"><p>Press F and drop the zip of another laboratory: it is checked first, then a manager may take it in.</p></Empty>} /> : null}
      </div>
    </View>
  );
}

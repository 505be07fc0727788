import { useMemo, useState } from 'react';
import type { Whereabouts } from '../../app/contract/custody.ts';
import { useHouse } from '../house/house-context.tsx';
import { DataTable, type Column } from '../look/data-table.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { FilterBox } from '../look/filter-box.tsx';
import { showDue, showMoment, showShortDay } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { go } from '../router.ts';
import { View } from '../shell/view.tsx';
import { focusSoon } from '../look/focus-soon.ts';
import { ActionButton } from './action-button.tsx';
import { MANY_ACTIONS, type CustodyAction } from './custody-actions.ts';
import { CustodyMany } from './custody-many.tsx';
import { inShelf, matchesWords, shelvesOf, type ShelfId } from './shelves.ts';
import './custody.css';

const whereWords = (row: Whereabouts) => (row.out ? `out with ${row.out.to}` : row.place || 'no place written');

/** Where everything is: by place, what is out with whom, what is late; several items are handed over, moved or counted at once. */
export default function CustodyOverview() {
  const { laboratory } = useHouse();
  const everything = useAsk('custody.whereabouts', {}, { keep: true });
  const [shelf, setShelf] = useState<ShelfId>('all');
  const [text, setText] = useState('');
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [action, setAction] = useState<CustodyAction | null>(null);
  const all = everything.data?.rows;
  const rows = useMemo(() => (all ?? []).filter((row) => inShelf(row, shelf) && matchesWords(row, text)), [all, shelf, text]);
  const picked = useMemo(() => (all ?? []).filter((row) => chosen.has(row.itemId)), [all, chosen]);
  const today = everything.data?.today ?? '';
  const toggle = (itemId: string) => { const next = new Set(chosen); if (!next.delete(itemId)) next.add(itemId); setChosen(next); };
  const allShown = rows.length > 0 && rows.every((row) => chosen.has(row.itemId));
  const toggleAll = () => { setChosen(allShown ? new Set() : new Set([...chosen, ...rows.map((row) => row.itemId)])); };
  const columns: readonly Column<Whereabouts>[] = [
    { key: 'pick', head: '', width: '26px', cell: (r) => <input type="checkbox" aria-label={`Choose ${r.caseNumber} / ${r.label}`} checked={chosen.has(r.itemId)} onClick={(e) => { e.stopPropagation(); }} onKeyDown={(e) => { if (e.key === 'Enter') e.stopPropagation(); }} onChange={() => { toggle(r.itemId); }} /> },
    { key: 'item', head: 'Item', width: '132px', mono: true, cell: (r) => `${r.caseNumber} / ${r.label}`, sort: (r) => `${r.caseNumber}/${r.label}` },
    { key: 'declared', head: 'Declared as', width: 'minmax(120px, 2fr)', cell: (r) => <span title={r.declared}>{r.declared}</span>, sort: (r) => r.declared },
    { key: 'client', head: 'Client', width: 'minmax(90px, 1.2fr)', cell: (r) => <span title={r.clientName}>{r.clientName}</span>, sort: (r) => r.clientName },
    { key: 'where', head: 'Where', width: 'minmax(130px, 1.8fr)', cell: (r) => <span title={r.out?.purpose ? `${whereWords(r)}, for ${r.out.purpose}` : whereWords(r)}>{whereWords(r)}</span>, sort: whereWords },
    { key: 'seal', head: 'Seal', width: '84px', mono: true, cell: (r) => <span title={r.seal}>{r.seal || '–'}</span>, sort: (r) => r.seal },
    { key: 'due', head: 'Back by', width: '104px', cell: (r) => (r.out ? <span className={r.out.overdue ? 'warn' : ''}>{r.out.dueBack ? showDue(r.out.dueBack, today) : 'no day agreed'}</span> : <span className="quiet">–</span>), sort: (r) => (r.out ? r.out.dueBack ?? '9998' : '9999') },
    { key: 'seen', head: 'Last entry', width: '84px', mono: true, cell: (r) => <span title={showMoment(r.seenAt, laboratory.zone)}>{showShortDay(r.seenAt, laboratory.zone)}</span>, sort: (r) => r.seenAt },
  ];
  const late = (all ?? []).filter((row) => row.out?.overdue).length;
  return (
    <View over={all ? `${all.length.toLocaleString('en')} items not yet returned${late > 0 ? `, ${late} overdue` : ''}` : ' '} title="Custody" actions={<FilterBox label="Item, client, place, seal, hands" value={text} onChange={setText} />}>
      {everything.isError ? <div className="page"><Trouble {...everything.error.failure} /></div> : null}
      {everything.isPending ? <Working what="Looking where everything is" /> : null}
      {everything.data ? (
        <div className="custody">
          <nav className="custody-shelves" aria-label="Places">
            {shelvesOf(everything.data.rows, everything.data.places).map((one) => (
              <button key={one.id} type="button" className="shelf-line" aria-current={one.id === shelf ? 'true' : undefined} onClick={() => { setShelf(one.id); }}>
                <span className={`one-line ${one.warn ? 'warn' : ''}`} title={one.name}>{one.name}</span><span className="mono">{one.count}</span>
              </button>
            ))}
            {laboratory.settings.places.length === 0 ? <p className="quiet custody-hint">Places can be listed under House; then they are offered wherever something is put away.</p> : null}
          </nav>
          <div className="page page-sheet custody-middle">
            <div className="row gap8 custody-several" role="group" aria-label="With the chosen items">
              <label className="check"><input type="checkbox" checked={allShown} disabled={rows.length === 0} onChange={toggleAll} /><span>{picked.length === 0 ? 'choose all shown' : `${picked.length} chosen`}</span></label>
              {MANY_ACTIONS.map((one) => <ActionButton key={one.event} action={one} disabled={picked.length === 0} onChoose={setAction} />)}
            </div>
            <div className="grow" style={{ minHeight: 0 }}>
              <DataTable label="Items in custody" rows={rows} columns={columns} rowKey={(r) => r.itemId} onOpen={(r) => { go({ view: 'case', id: r.caseId }); }} firstOrder={{ key: 'due', down: false }}
                empty={all?.length === 0 ? <Empty title="Nothing in custody"><p>When a client hands something over, press N.</p></Empty> : <Empty title="Nothing here"><p>Choose another place at the left, or change the words above.</p></Empty>} />
            </div>
          </div>
        </div>
      ) : null}
      {action ? <CustodyMany action={action} items={picked} onClose={() => { setAction(null); if (chosen.size === 0) focusSoon('.custody-several input'); }} onWritten={() => { setChosen(new Set()); }} /> : null}
    </View>
  );
}

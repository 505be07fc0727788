import { useState } from 'react';
import type { CaseView, ItemView } from '../../app/contract/cases.ts';
import { Button } from '../look/button.tsx';
import { DataTable, type Column } from '../look/data-table.tsx';
import { Photographs } from './photographs.tsx';
import { itemHeading, itemWeight } from './item-words.ts';
import { Fact } from './fact.tsx';
import { ClientForm } from './client-form.tsx';
import { PrintChain } from '../custody/print-chain.tsx';
import { CustodyTable } from '../custody/custody-table.tsx';
import { Segmented } from '../look/choice.tsx';

const COLUMNS: readonly Column<ItemView>[] = [
  { key: 'item', head: 'Item', width: 'minmax(120px, 1fr)', cell: (i) => <span title={itemHeading(i)}>{itemHeading(i)}</span> },
  { key: 'declared', head: 'Declared as', width: 'minmax(130px, 2fr)', cell: (i) => <span title={i.declared}>{i.declared}</span> },
  { key: 'weight', head: 'Weight', width: '96px', align: 'right', mono: true, cell: (i) => <span className={i.custody.differs ? 'warn' : ''} title={i.custody.differs ? 'A later weight differs by more than the tolerance: see the custody entries' : undefined}>{itemWeight(i)}</span> },
  { key: 'where', head: 'Where', width: 'minmax(100px, 1fr)', cell: (i) => <span title={i.custody.place || i.custody.holder}>{i.custody.place || i.custody.holder}</span> },
  { key: 'seal', head: 'Seal', width: 'minmax(72px, 0.6fr)', mono: true, cell: (i) => <span title={i.custody.seal}>{i.custody.seal || '–'}</span> },
];

/** The case as a whole: what was asked, its items, its papers and every hand they passed through. */
export function CaseOverview({ case: c, onChoose }: { readonly case: CaseView; readonly onChoose: (itemId: string) => void }) {
  const [below, setBelow] = useState<'custody' | 'photographs'>('custody');
  const [editing, setEditing] = useState(false);
  const items = c.parcels.flatMap((p) => p.items);
  return (
    <div className="case-page">
      <dl className="facts">
        <Fact name="The client asks" text={c.asks} />
        {c.remarks ? <Fact name="Remarks" text={c.remarks} /> : null}
        <div><dt>Client</dt><dd className="row gap8 fact-client"><span className="grow">{[c.client.address, c.client.email, c.client.phone].filter(Boolean).join(' · ') || 'nothing written'}</span><Button kind="quiet" onPress={() => { setEditing(true); }}>Edit</Button></dd></div>
      </dl>
      <section style={{ height: 36 + Math.min(items.length, 8) * 33 }}>
        <DataTable label="Items" rows={items} columns={COLUMNS} rowKey={(i) => i.id} onOpen={(i) => { onChoose(i.id); }} />
      </section>
      {below === 'custody' ? <div><PrintChain caseId={c.id} item={null} /></div> : null}
      <Segmented label="Below" value={below} onChange={setBelow} options={[{ value: 'custody', label: 'custody' }, { value: 'photographs', label: 'photographs' }]} />
      {editing ? <ClientForm client={c.client} onClose={() => { setEditing(false); }} /> : null}
      {below === 'custody' ? <CustodyTable caseId={c.id} itemId={null} /> : <Photographs caseId={c.id} itemId={null} photographs={c.photographs} />}
    </div>
  );
}

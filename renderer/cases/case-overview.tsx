import { useState } from 'react';
import type { CaseView, ItemView } from '../../app/contract/cases.ts';
import { Button } from '../look/button.tsx';
import { DataTable, type Column } from '../look/data-table.tsx';
import { Photographs } from './photographs.tsx';
import { itemHeading, itemWeight } from './item-words.ts';
import { ClientForm } from './client-form.tsx';
import { CustodyTable } from './custody-table.tsx';
import { Segmented } from '../look/choice.tsx';

const COLUMNS: readonly Column<ItemView>[] = [
  { key: 'item', head: 'Item', width: '180px', cell: (i) => itemHeading(i) },
  { key: 'declared', head: 'Declared as', width: 'minmax(160px, 2fr)', cell: (i) => <span title={i.declared}>{i.declared}</span> },
  { key: 'weight', head: 'Weight', width: '110px', align: 'right', mono: true, cell: (i) => itemWeight(i) },
  { key: 'where', head: 'Where', width: 'minmax(120px, 1fr)', cell: (i) => <span className={i.custody.differs ? 'warn' : ''} title={i.custody.place}>{i.custody.place || i.custody.holder}</span> },
  { key: 'seal', head: 'Seal', width: '90px', mono: true, cell: (i) => i.custody.seal || '–' },
];

/** The case as a whole: what was asked, its items, its papers and every hand they passed through. */
export function CaseOverview({ case: c, onChoose }: { readonly case: CaseView; readonly onChoose: (itemId: string) => void }) {
  const [below, setBelow] = useState<'custody' | 'photographs'>('custody');
  const [editing, setEditing] = useState(false);
  const items = c.parcels.flatMap((p) => p.items);
  return (
    <div className="case-page">
      <dl className="facts">
        <div><dt>The client asks</dt><dd>{c.asks}</dd></div>
        {c.remarks ? <div><dt>Remarks</dt><dd>{c.remarks}</dd></div> : null}
        <div><dt>Client</dt><dd className="row gap8"><span className="grow">{[c.client.address, c.client.email, c.client.phone].filter(Boolean).join(' · ') || 'nothing written'}</span><Button kind="quiet" onPress={() => { setEditing(true); }}>Edit</Button></dd></div>
      </dl>
      <section style={{ height: 36 + Math.min(items.length, 8) * 33 }}>
        <DataTable label="Items" rows={items} columns={COLUMNS} rowKey={(i) => i.id} onOpen={(i) => { onChoose(i.id); }} />
      </section>
      <Segmented label="Below" value={below} onChange={setBelow} options={[{ value: 'custody', label: 'custody' }, { value: 'photographs', label: 'photographs' }]} />
      {editing ? <ClientForm client={c.client} onClose={() => { setEditing(false); }} /> : null}
      {below === 'custody' ? <CustodyTable caseId={c.id} itemId={null} /> : <Photographs caseId={c.id} itemId={null} photographs={c.photographs} />}
    </div>
  );
}

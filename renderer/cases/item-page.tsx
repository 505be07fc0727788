import { useState } from 'react';
import type { CaseView, ItemView, StoneSummary } from '../../app/contract/cases.ts';
import { COLOUR_CLASS_WORDS } from '../../app/domain/colour-class.ts';
import { CUSTODY_EVENT_WORDS } from '../../app/domain/custody-event.ts';
import { formatCarat } from '../../app/domain/weight.ts';
import { estimateText } from '../../app/weights/estimate-text.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Segmented } from '../look/choice.tsx';
import { DataTable, type Column } from '../look/data-table.tsx';
import { Empty } from '../look/empty.tsx';
import { Glyph } from '../look/glyph.tsx';
import { showDate, showMoment } from '../look/time.ts';
import { go } from '../router.ts';
import { colourShort } from '../stones/colour-short.ts';
import { STAGE_WORDS } from '../stones/stage-words.ts';
import { custodyActions, type CustodyAction } from '../custody/custody-actions.ts';
import { ActionButton } from '../custody/action-button.tsx';
import { CustodyForm } from '../custody/custody-form.tsx';
import { PrintChain } from '../custody/print-chain.tsx';
import { CustodyTable } from '../custody/custody-table.tsx';
import { Fact } from './fact.tsx';
import { itemHeading, itemWeight } from './item-words.ts';
import { Photographs } from './photographs.tsx';
import { StoneForm } from './stone-form.tsx';
import { PieceTotal } from '../weights/piece-total.tsx';
import { useAsk } from '../queries.ts';
import { conclusionWords, isWithheld } from '../stones/conclusion-words.ts';
import { shownConclusion } from '../stones/shown-conclusion.ts';
import './cases.css';

function ConclusionCell({ stone: s }: { readonly stone: StoneSummary }) {
  const words = conclusionWords(s, 'open');
  const stage = s.stage === 'open' || isWithheld(s) ? '' : STAGE_WORDS[s.stage];
  return (
    <span className="row gap8" title={stage ? `${words}; ${stage}` : words}>
      <Glyph of={shownConclusion(s)} />
      <span className="conclusion-cell"><span className="two-lines">{words}</span>{stage ? <span className={`one-line ${s.stage === 'disagreed' ? 'warn' : 'quiet'}`}>{stage}</span> : null}</span>
    </span>
  );
}

/** One item: where it is, what hands it passed through, its stones, its photographs. */
export function ItemPage({ case: c, item }: { readonly case: CaseView; readonly item: ItemView }) {
  const { laboratory } = useHouse();
  const [action, setAction] = useState<CustodyAction | null>(null);
  const [stone, setStone] = useState<StoneSummary | 'new' | null>(null);
  const [below, setBelow] = useState<'stones' | 'custody' | 'photographs'>('stones');
  const weights = useAsk('weights.ofItem', item.kind === 'jewellery' ? { itemId: item.id } : null, { keep: true }).data;
  const estimateOf = (stoneId: string) => weights?.stones.find((one) => one.stoneId === stoneId)?.estimate ?? null;
  const caratCell = (s: StoneSummary) => {
    const estimate = estimateOf(s.id);
    if (s.weight !== null) return formatCarat(s.weight);
    return estimate ? <span className="second" title={`Estimated: ${estimateText(estimate)}, k = 2`}>≈ {(estimate.weight / 10_000).toFixed(2)}</span> : '–';
  };
  useKey('M', () => { go({ view: 'piece', id: item.id }); }, item.kind !== 'loose');
  useKey('L', () => { go({ view: 'lot', id: item.id }); }, item.kind === 'lot');
  const k = item.custody;
  const outWords = k.out ? `out with ${k.out.to}${k.out.dueBack ? `, back by ${showDate(k.out.dueBack)}` : ''}` : '';
  const whereabouts = [outWords || k.place, k.seal ? `seal ${k.seal}` : '', `${CUSTODY_EVENT_WORDS[k.lastEvent]} ${showMoment(k.at, laboratory.zone)}`].filter(Boolean).join(', ');
  const columns: readonly Column<StoneSummary>[] = [
    { key: 'label', head: 'Stone', width: '48px', mono: true, cell: (s) => s.label, sort: (s) => s.label },
    { key: 'position', head: 'Where it sits', width: 'minmax(86px, 1.8fr)', cell: (s) => <span className="two-lines" title={s.position}>{s.position || '–'}</span>, sort: (s) => s.position },
    { key: 'conclusion', head: 'Conclusion', width: 'minmax(116px, 3.4fr)', cell: (s) => <ConclusionCell stone={s} />, sort: (s) => `${s.conclusion ?? ''} ${s.stage}` },
    { key: 'shape', head: 'Shape', width: 'minmax(60px, 1fr)', cell: (s) => <span title={s.shape}>{s.shape || '–'}</span>, sort: (s) => s.shape },
    { key: 'weight', head: 'Carat', width: '60px', align: 'right', mono: true, cell: caratCell, sort: (s) => s.weight ?? estimateOf(s.id)?.weight ?? -1 },
    { key: 'colour', head: 'Colour class', width: 'minmax(72px, 1fr)', cell: (s) => <span title={COLOUR_CLASS_WORDS[s.colourClass]}>{colourShort(s.colourClass)}</span>, sort: (s) => s.colourClass },
    { key: 'runs', head: 'Runs', width: '36px', align: 'right', mono: true, cell: (s) => s.runs, sort: (s) => s.runs },
    { key: 'edit', head: '', width: '48px', align: 'right', cell: (s) => <span onClick={(e) => { e.stopPropagation(); }}><Button kind="quiet" onPress={() => { setStone(s); }}>Edit</Button></span> },
  ];
  return (
    <div className="case-page">
      <header className="row gap12"><h2 className="item-title">{itemHeading(item)}</h2><span className="tag one-line" title={whereabouts}>{whereabouts}</span></header>
      <dl className="facts">
        <Fact name="Declared as" text={item.declared} />
        <Fact name="Declared value" text={item.declaredValue || 'none'} />
        <Fact name="Gross weight" mono text={`${itemWeight(item)}${item.count !== null ? `, ${item.count} stones` : ''}`} />
        <Fact name="Condition" text={item.condition || 'nothing written'} />
        <Fact name="In whose hands" text={k.holder || 'the laboratory'} />
      </dl>
      {k.differs ? <p className="warn">A weight of this item differs by more than the tolerance from the one before it, or from the first: see the custody entries.</p> : null}
      {k.lastEvent === 'returned' ? <p className="second">Returned to the client: its custody is closed. If it comes back, take it in as a new case.</p> : (
        <div className="row gap4 custody-actions" role="group" aria-label="Custody">
          {custodyActions(k.out !== null).map((a) => <ActionButton key={a.event} action={a} onChoose={setAction} />)}
        </div>
      )}
      <div className="row gap8">
        <Segmented label="Below" value={below} onChange={setBelow} options={[{ value: 'stones', label: 'stones' }, { value: 'custody', label: 'custody' }, { value: 'photographs', label: `photographs ${item.photographs.length || ''}`.trim() }]} />
        <span className="grow" />
        {item.kind === 'loose' ? null : <Button keys="M" onPress={() => { go({ view: 'piece', id: item.id }); }}>Map of the piece</Button>}
        {item.kind === 'lot' ? <Button keys="L" onPress={() => { go({ view: 'lot', id: item.id }); }}>Open the lot</Button> : null}
        {below === 'custody' ? <PrintChain caseId={c.id} item={item} /> : null}
        {below === 'stones' ? <Button kind="quiet" onPress={() => { setStone('new'); }}>Add a stone</Button> : null}
      </div>
      {below === 'stones' ? (
        <div className="case-table">
          <DataTable label={`Stones of ${item.label}`} rows={item.stones} columns={columns} rowKey={(s) => s.id} rowHeight={50} onOpen={(s) => { go({ view: 'stone', id: s.id }); }}
            empty={<Empty title="No stone singled out yet"><p>{item.kind === 'lot' ? 'The stones of a lot are entered by their numbers: open the lot. One that is tested by itself gets a folder of its own: add it here.' : 'A stone gets its own folder when it is tested: add it here.'}</p></Empty>} />
        </div>
      ) : null}
      {below === 'stones' && item.kind === 'jewellery' && weights && item.stones.length > 0 ? <PieceTotal key={weights.declared?.at ?? 'none'} itemId={item.id} weights={weights} /> : null}
      {below === 'custody' ? <CustodyTable caseId={c.id} itemId={item.id} /> : null}
      {below === 'photographs' ? <Photographs caseId={c.id} itemId={item.id} photographs={item.photographs} /> : null}
      {action ? <CustodyForm action={action} item={item} onClose={() => { setAction(null); }} /> : null}
      {stone ? <StoneForm item={item} stone={stone === 'new' ? null : stone} onClose={() => { setStone(null); }} /> : null}
    </div>
  );
}

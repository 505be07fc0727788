import { useMemo, useState } from 'react';
import type { LotResultView, LotView as Lot } from '../../app/contract/lots.ts';
import type { Role } from '../../app/domain/role.ts';
import { formatCarat } from '../../app/domain/weight.ts';
import { drawSample } from '../../app/lots/draw-sample.ts';
import { lotRemarks } from '../../app/lots/lot-remarks.ts';
import { lotFigures } from '../../app/lots/lot-statement.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Segmented } from '../look/choice.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { useAsk } from '../queries.ts';
import { go, placeAddress } from '../router.ts';
import { View } from '../shell/view.tsx';
import { CountForm } from './count-form.tsx';
import { FoldersSheet } from './folders-sheet.tsx';
import { ImportSheet } from './import-sheet.tsx';
import { LotMargin } from './lot-margin.tsx';
import { PlanForm } from './plan-form.tsx';
import { ResultGrid } from './result-grid.tsx';
import { SplitForm } from './split-form.tsx';
import { useResultEntry } from './use-result-entry.ts';
import './lots.css';

const PANELS = ['count', 'plan', 'results', 'parts'] as const;
type Panel = (typeof PANELS)[number];
const PANEL_WORDS: Readonly<Record<Panel, string>> = { count: 'count and sizes', plan: 'plan', results: 'results', parts: 'parts' };
const BENCH: readonly Role[] = ['examiner', 'second-examiner', 'manager'];

/** A lot of small stones: counted, planned, tested, split; what it says stands beside. */
export default function LotView({ itemId, panel }: { readonly itemId: string; readonly panel?: string | undefined }) {
  const { me } = useHouse();
  const lot = useAsk('lots.get', { itemId }, { keep: true });
  const results = useAsk('lots.results', { itemId }, { keep: true });
  const error = lot.error ?? results.error;
  if (error) return <View title="Lot"><div className="page page-sheet"><Trouble {...error.failure} /></div></View>;
  if (!lot.data || !results.data || lot.data.itemId !== itemId) return <View title="Lot"><Working what="Reading the lot" /></View>;
  return <Opened lot={lot.data} kept={results.data} panel={PANELS.find((one) => one === panel)} roles={me?.roles ?? []} me={me?.name ?? ''} />;
}

type OpenedProps = { readonly lot: Lot; readonly kept: readonly LotResultView[]; readonly panel: Panel | undefined; readonly roles: readonly Role[]; readonly me: string };

function Opened({ lot, kept, panel: asked, roles, me }: OpenedProps) {
  // Where one begins does not change under one's hands when the plan is kept.
  const [first] = useState<Panel>(() => (lot.count === null ? 'count' : lot.plan === null ? 'plan' : 'results'));
  const panel = asked ?? first;
  const [sheet, setSheet] = useState<'import' | 'folders' | null>(null);
  const [every, setEvery] = useState(false);
  const entry = useResultEntry(lot.itemId, kept, me);
  const plan = lot.plan?.content ?? null;
  const list = useMemo(() => (plan === null || plan.seed === null ? null : drawSample(plan.lot, plan.size, plan.seed)), [plan]);
  const numbers = useMemo(() => (list !== null && !every ? list : Array.from({ length: lot.count ?? 0 }, (_, i) => i + 1)), [list, every, lot.count]);
  const figures = useMemo(() => (lot.count === null ? null : lotFigures(lot.count, entry.results, plan)), [lot.count, entry.results, plan]);
  const folders = useMemo(() => new Map(lot.folders.map((one) => [one.stoneId, one])), [lot.folders]);
  const remarks = useMemo(() => (lot.count === null ? [] : lotRemarks(lot.count, entry.results, plan, folders)), [lot.count, entry.results, plan, folders]);
  const standing = useMemo(() => new Map(entry.results.map((one) => [one.number, one.outcome])), [entry.results]);
  const tied = useMemo(() => new Map(entry.results.flatMap((one) => (one.stoneId === null ? [] : [[one.stoneId, one.number] as const]))), [entry.results]);
  const open = !lot.returned;
  const mayTest = open && roles.some((role) => BENCH.includes(role));
  const mayCount = mayTest || (open && roles.includes('intake'));
  const show = (to: Panel) => { go({ view: 'lot', id: lot.itemId, panel: to }); };
  useKey('Alt+1', () => { show('count'); });
  useKey('Alt+2', () => { show('plan'); });
  useKey('Alt+3', () => { show('results'); });
  useKey('Alt+4', () => { show('parts'); });
  const mayBring = mayTest && lot.count !== null;
  useKey('I', () => { setSheet('import'); }, mayBring && sheet === null);
  useKey('F', () => { setSheet('folders'); }, mayBring && sheet === null);
  const size = [lot.count === null ? 'not counted' : `${lot.count} stones`, lot.weight === null ? '' : `${formatCarat(lot.weight)} ct`].filter(Boolean).join(', ');
  return (
    <View over={<><a className="mono" href={placeAddress({ view: 'case', id: lot.caseId })}>{lot.caseNumber}</a> · {lot.clientName}</>} title={`Lot ${lot.label}`} beside={<span title={lot.declared}>{lot.declared}</span>}
      actions={(
        <>
          <span className="tag">{size}</span>
          {mayBring ? <><Button keys="F" onPress={() => { setSheet('folders'); }}>From folders</Button><Button keys="I" onPress={() => { setSheet('import'); }}>From a list</Button></> : null}
        </>
      )}>
      <div className="lot">
        <div className="lot-work">
          <div className="row gap12"><Segmented<Panel> label="Of this lot" value={panel} onChange={show} options={PANELS.map((value) => ({ value, label: PANEL_WORDS[value] }))} /><span className="quiet">Alt 1 to Alt 4</span>
            <span className="grow" />
            {panel === 'results' && list !== null ? <Segmented label="Which stones" value={every ? 'every' : 'list'} onChange={(value) => { setEvery(value === 'every'); }} options={[{ value: 'list', label: `the ${list.length} drawn` }, { value: 'every', label: 'every stone' }]} /> : null}
          </div>
          {lot.returned ? <p className="second">This case was returned to the client: what was recorded stays as it is.</p> : null}
          {panel === 'count' ? <CountForm key={lot.counted?.at ?? 'none'} lot={lot} mayCount={mayCount} /> : null}
          {panel === 'plan' ? <PlanForm key={lot.plan?.ordinal ?? 0} lot={lot} mayPlan={mayTest} /> : null}
          {panel === 'results' ? (lot.count === null ? <Empty title="Not counted yet"><p>Results are entered by the stone’s number: count the lot first.</p></Empty>
            : <ResultGrid key={every ? 'every' : 'list'} numbers={numbers} entry={entry} mayEnter={mayTest} />) : null}
          {panel === 'parts' ? <SplitForm key={lot.split?.at ?? 'none'} lot={lot} figures={figures} maySplit={mayCount} /> : null}
        </div>
        <LotMargin lot={lot} figures={figures} remarks={remarks} />
      </div>
      {sheet === 'import' ? <ImportSheet lot={lot} count={lot.count ?? 0} standing={standing} onClose={() => { setSheet(null); }} /> : null}
      {sheet === 'folders' ? <FoldersSheet lot={lot} standing={standing} tied={tied} onClose={() => { setSheet(null); }} /> : null}
    </View>
  );
}

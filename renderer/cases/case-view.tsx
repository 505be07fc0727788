import { useState } from 'react';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { showDate, showDay, showDue } from '../look/time.ts';
import { useAsk, useChange } from '../queries.ts';
import { View } from '../shell/view.tsx';
import { useSavedPdf } from '../use-saved-pdf.ts';
import { AmendCase } from './amend-case.tsx';
import { CaseOverview } from './case-overview.tsx';
import { CaseTree } from './case-tree.tsx';
import { ItemPage } from './item-page.tsx';
import { ReportMargin } from './report-margin.tsx';
import './cases.css';

/** A case: its tree, the chosen item with its custody, and the report beside it. */
export default function CaseView({ caseId }: { readonly caseId: string }) {
  const { laboratory } = useHouse();
  const folder = useAsk('cases.get', { caseId }, { keep: true });
  const today = useAsk('bench.today', {}, { keep: true }).data?.today;
  const [chosen, setChosen] = useState<string | null>(null);
  const [amending, setAmending] = useState(false);
  const receipt = useSavedPdf('print.receipt');
  const labels = useSavedPdf('print.labels');
  const bundle = useChange('cases.bundle');
  const notes = useNotes();
  const pack = () => { bundle.mutate({ caseId }, { onSuccess: (b) => { saveFile(b.name, 'application/zip', b.zip); notes.say(`Saved ${b.name}`); }, onError: (e) => { notes.complain(e.failure); } }); };
  const saveReceipt = () => { if (!receipt.isPending) receipt.save({ caseId }); };
  const saveLabels = () => { if (!labels.isPending) labels.save({ caseId }); };
  useKey('I', saveReceipt);
  useKey('A', saveLabels);
  useKey('U', () => { if (!bundle.isPending) pack(); });
  useKey('E', () => { setAmending(true); }, !amending);

  if (folder.isError) return <View title="Case"><div className="page"><Trouble {...folder.error.failure} /></div></View>;
  if (folder.isPending) return <View title="Case"><Working what="Opening the case" /></View>;
  const c = folder.data;
  const items = c.parcels.flatMap((p) => p.items);
  const item = items.find((i) => i.id === chosen) ?? (items.length === 1 ? items[0] : undefined);
  const due = c.dueOn && today ? (c.state === 'open' ? `due ${showDue(c.dueOn, today)}` : `was due ${showDate(c.dueOn)}`) : 'no due date';
  return (
    <View
      over={<>Received {showDay(c.receivedAt, laboratory.zone)} by {c.createdBy} · <span className={c.state === 'open' && c.dueOn && today && c.dueOn < today ? 'warn' : ''}>{due}</span>{c.state === 'open' ? '' : ` · ${c.state}`}</>}
      title={<span className="mono case-number">{c.number}</span>} beside={<span title={c.client.name}>{c.client.name}</span>}
      actions={(
        <>
          <Button keys="E" onPress={() => { setAmending(true); }}>Amend</Button>
          <Button keys="I" isPending={receipt.isPending} onPress={saveReceipt}>Receipt</Button>
          <Button keys="A" isPending={labels.isPending} onPress={saveLabels}>Labels</Button>
          <Button keys="U" isPending={bundle.isPending} onPress={pack}>Bundle</Button>
        </>
      )}>
      <div className="case">
        <CaseTree case={c} chosen={item?.id ?? null} onChoose={setChosen} />
        <div className="case-middle">{item ? <ItemPage key={item.id} case={c} item={item} /> : <CaseOverview case={c} onChoose={setChosen} />}</div>
        <ReportMargin case={c} />
      </div>
      {amending ? <AmendCase case={c} onClose={() => { setAmending(false); }} /> : null}
    </View>
  );
}

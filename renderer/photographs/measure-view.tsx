import { useState } from 'react';
import type { AnalysisOf, PhotoAnalysisContent, PhotoAnalysisView } from '../../app/contract/images.ts';
import type { PieceView } from '../../app/contract/pieces.ts';
import { Segmented } from '../look/choice.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { useAsk } from '../queries.ts';
import { go, placeAddress } from '../router.ts';
import { View } from '../shell/view.tsx';
import { DecayPage } from './decay-page.tsx';
import { PairPage } from './pair-page.tsx';
import { PolariserPage } from './polariser-page.tsx';
import '../piece/piece.css';
import './photographs.css';

type Kind = PhotoAnalysisContent['kind'];

const KINDS: readonly { readonly value: Kind; readonly label: string }[] = [
  { value: 'pair', label: 'long-wave against short-wave' }, { value: 'decay', label: 'after-glow' }, { value: 'polarisers', label: 'crossed polarisers' },
];

export const isOf = <K extends Kind>(kind: K) => (analysis: PhotoAnalysisView): analysis is AnalysisOf<K> => analysis.content.kind === kind;

/** What can be measured on the photographs of an item: both lamps against one another, the after-glow, strain between polarisers. */
export default function MeasureView({ itemId, panel }: { readonly itemId: string; readonly panel: string | undefined }) {
  const piece = useAsk('pieces.get', { itemId }, { keep: true });
  const analyses = useAsk('images.ofItem', { itemId }, { keep: true });
  const trouble = piece.error ?? analyses.error;
  if (trouble) return <View title="Photographs"><div className="page page-sheet"><Trouble {...trouble.failure} /></div></View>;
  if (!piece.data || !analyses.data || piece.data.item.id !== itemId) return <View title="Photographs"><Working what="Opening the photographs" /></View>;
  return <Shown piece={piece.data} analyses={analyses.data} panel={panel} />;
}

/** `panel` is a kind, or the id of an analysis. */
function Shown({ piece, analyses, panel }: { readonly piece: PieceView; readonly analyses: readonly PhotoAnalysisView[]; readonly panel: string | undefined }) {
  const { item } = piece;
  const named = analyses.find((one) => one.id === panel);
  const kind: Kind = named?.content.kind ?? KINDS.find(({ value }) => value === panel)?.value ?? 'pair';
  const [anewFor, setAnewFor] = useState<Kind | null>(null);
  const opened = (id: string) => { setAnewFor(null); go({ view: 'pair', id: item.id, panel: id }); };
  const common = { piece, anew: anewFor === kind, onAnew: (anew: boolean) => { setAnewFor(anew ? kind : null); }, onOpen: opened };
  return (
    <View
      over={<><a className="mono" href={placeAddress({ view: 'case', id: piece.caseId })}>{piece.caseNumber}</a> · {piece.clientName} · <a href={placeAddress({ view: 'piece', id: item.id })}>map</a></>}
      title={`Item ${item.label}`} beside={<span title={item.declared}>measured on photographs</span>}
      actions={<Segmented label="What is measured" value={kind} options={KINDS} onChange={(next) => { go({ view: 'pair', id: item.id, panel: next }); }} />}>
      {kind === 'pair' ? <PairPage {...common} analyses={analyses.filter(isOf('pair'))} chosen={panel} /> : null}
      {kind === 'decay' ? <DecayPage {...common} analyses={analyses.filter(isOf('decay'))} chosen={panel} /> : null}
      {kind === 'polarisers' ? <PolariserPage {...common} analyses={analyses.filter(isOf('polarisers'))} chosen={panel} /> : null}
    </View>
  );
}

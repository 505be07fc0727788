import { useState } from 'react';
import type { PhotoAnalysisView } from '../../app/contract/images.ts';
import type { PieceView } from '../../app/contract/pieces.ts';
import { Button } from '../look/button.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { useAsk } from '../queries.ts';
import { go, placeAddress } from '../router.ts';
import { View } from '../shell/view.tsx';
import { PairForm } from './pair-form.tsx';
import { PairMargin } from './pair-margin.tsx';
import { PairStage } from './pair-stage.tsx';
import '../piece/piece.css';
import './photographs.css';

/** A piece under both lamps: the photographs on one another, what each stone answers, and who stands out. */
export default function PairView({ itemId, analysisId }: { readonly itemId: string; readonly analysisId: string | undefined }) {
  const piece = useAsk('pieces.get', { itemId }, { keep: true });
  const analyses = useAsk('images.ofItem', { itemId }, { keep: true });
  const trouble = piece.error ?? analyses.error;
  if (trouble) return <View title="Photographs"><div className="page page-sheet"><Trouble {...trouble.failure} /></div></View>;
  if (!piece.data || !analyses.data || piece.data.item.id !== itemId) return <View title="Photographs"><Working what="Opening the photographs" /></View>;
  return <Shown piece={piece.data} analyses={analyses.data} analysisId={analysisId} />;
}

function Shown({ piece, analyses, analysisId }: { readonly piece: PieceView; readonly analyses: readonly PhotoAnalysisView[]; readonly analysisId: string | undefined }) {
  const { item } = piece;
  const [anew, setAnew] = useState(false);
  const [selected, setSelected] = useState<string | null>(null);
  const analysis = analyses.find((one) => one.id === analysisId) ?? analyses[0];
  const uv = item.photographs.filter((photograph) => photograph.light === 'long-wave' || photograph.light === 'short-wave');
  const asking = anew || !analysis;
  const opened = (id: string) => { setAnew(false); setSelected(null); go({ view: 'pair', id: item.id, panel: id }); };
  return (
    <View
      over={<><a className="mono" href={placeAddress({ view: 'case', id: piece.caseId })}>{piece.caseNumber}</a> · {piece.clientName} · <a href={placeAddress({ view: 'piece', id: item.id })}>map</a></>}
      title={`Item ${item.label}`} beside={<span title={item.declared}>long-wave against short-wave</span>}
      actions={analysis ? <Button onPress={() => { setAnew(!anew); }}>{anew ? 'Back to the comparison' : 'Compare anew'}</Button> : null}>
      {asking && uv.length < 2 ? (
        <div className="page page-sheet">
          <Empty title="Two photographs are needed">
            <p>Add one photograph of the piece under long-wave and one under short-wave ultraviolet to the item, and say with each which light it was taken in. Camera on a stand, piece not moved, long-wave first; the same aperture, and exposures by hand.</p>
            <div className="row gap8 empty-acts"><Button kind="main" autoFocus onPress={() => { go({ view: 'case', id: piece.caseId }); }}>To the item’s photographs</Button></div>
          </Empty>
        </div>
      ) : asking ? (
        <div className="page page-sheet"><PairForm piece={piece} before={analysis} onCompared={opened} /></div>
      ) : (
        <div className="piece pair">
          <PairStage item={item} analysis={analysis} selected={selected} onSelect={setSelected} />
          <PairMargin item={item} analysis={analysis} others={analyses} selected={selected} onSelect={setSelected} onOpen={opened} />
        </div>
      )}
    </View>
  );
}

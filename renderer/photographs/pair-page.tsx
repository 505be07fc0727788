import { useState } from 'react';
import { Button } from '../look/button.tsx';
import { Empty } from '../look/empty.tsx';
import { go } from '../router.ts';
import type { PageProps } from './page-props.ts';
import { PairForm } from './pair-form.tsx';
import { PairMargin } from './pair-margin.tsx';
import { PairStage } from './pair-stage.tsx';

/** A piece under both lamps: the photographs on one another, what each stone answers, and who stands out. */
export function PairPage({ piece, analyses, chosen, anew, onAnew, onOpen }: PageProps<'pair'>) {
  const { item } = piece;
  const [selected, setSelected] = useState<string | null>(null);
  const analysis = analyses.find((one) => one.id === chosen) ?? analyses[0];
  const uv = item.photographs.filter((photograph) => photograph.light === 'long-wave' || photograph.light === 'short-wave');
  const opened = (id: string) => { setSelected(null); onOpen(id); };
  if (analysis && !anew) {
    return (
      <div className="piece pair">
        <PairStage item={item} analysis={analysis} selected={selected} onSelect={setSelected} />
        <PairMargin item={item} analysis={analysis} others={analyses} selected={selected} onSelect={setSelected} onOpen={opened} onAnew={() => { onAnew(true); }} />
      </div>
    );
  }
  if (uv.length < 2) {
    return (
      <div className="page page-sheet">
        <Empty title="Two photographs are needed">
          <p>Add one photograph of the piece under long-wave and one under short-wave ultraviolet to the item, and say with each which light it was taken in. Camera on a stand, piece not moved, long-wave first; the same aperture, and exposures by hand.</p>
          <div className="row gap8 empty-acts"><Button kind="main" autoFocus onPress={() => { go({ view: 'case', id: piece.caseId }); }}>To the item’s photographs</Button></div>
        </Empty>
      </div>
    );
  }
  return <div className="page page-sheet"><PairForm piece={piece} before={analysis} onCompared={opened} onBack={analysis ? () => { onAnew(false); } : null} /></div>;
}

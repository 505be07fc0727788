import { Empty } from '../look/empty.tsx';
import { DecayForm } from './decay-form.tsx';
import { DecayTable } from './decay-table.tsx';
import type { PageProps } from './page-props.ts';
import { Propose } from './propose.tsx';
import { WhenMeasured } from './when-measured.tsx';

/** The after-glow of a piece's stones over timed photographs. */
export function DecayPage({ piece, analyses, chosen, anew, onAnew, onOpen }: PageProps<'decay'>) {
  const analysis = analyses.find((one) => one.id === chosen) ?? analyses[0];
  const photographs = piece.item.photographs.filter((photograph) => photograph.light !== 'drawing');
  if (analysis && !anew) {
    const { result } = analysis.content;
    return (
      <div className="page page-sheet measured">
        <WhenMeasured analysis={analysis} others={analyses} onOpen={onOpen} />
        {result.notes.length > 0 ? <ul className="map-gaps">{result.notes.map((note) => <li key={note}>{note}</li>)}</ul> : null}
        <DecayTable item={piece.item} result={result} />
        <Propose analysis={analysis} stones={result.stones} pictures="the photographs of the series" onAnew={() => { onAnew(true); }} />
      </div>
    );
  }
  if (photographs.length < 3) {
    return (
      <div className="page page-sheet">
        <Empty title="Three photographs or more are needed">
          <p>Light the piece with short-wave ultraviolet, switch the lamp off and photograph it in the dark at known times, camera and piece unmoved. Add the photographs to the item; then write here how many seconds after the lamp each was taken. A length seen by eye is written down as an observation of phosphorescence in the stone’s folder.</p>
        </Empty>
      </div>
    );
  }
  return <div className="page page-sheet"><DecayForm piece={piece} photographs={photographs} before={analysis} onMeasured={onOpen} onBack={analysis ? () => { onAnew(false); } : null} /></div>;
}

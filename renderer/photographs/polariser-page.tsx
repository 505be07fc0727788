import { useState } from 'react';
import type { PieceView } from '../../app/contract/pieces.ts';
import type { AnalysisOf } from '../../app/contract/images.ts';
import { INDICATION_WORDS } from '../../app/images/polariser-findings.ts';
import type { StrainPattern } from '../../app/images/strain-pattern.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { LIGHT_WORDS } from '../piece/light-words.ts';
import { Thumbnail } from '../piece/thumbnail.tsx';
import { useChange } from '../queries.ts';
import { placeAddress } from '../router.ts';
import { MapChoice, measurableMaps } from './map-choice.tsx';
import type { PageProps } from './page-props.ts';
import { Propose } from './propose.tsx';
import { WhenMeasured } from './when-measured.tsx';

/** The strain of stones on a photograph between crossed polarisers, as an indication. */
export function PolariserPage({ piece, analyses, chosen, anew, onAnew, onOpen }: PageProps<'polarisers'>) {
  const analysis = analyses.find((one) => one.id === chosen) ?? analyses[0];
  if (analysis && !anew) {
    return (
      <div className="page page-sheet measured">
        <WhenMeasured analysis={analysis} others={analyses} onOpen={onOpen} />
        <p className="second">An indication: facets, inclusions and the lamp can look like strain. Name the pattern you see as an observation in the stone’s folder.</p>
        <StrainTable piece={piece} analysis={analysis} />
        <Propose analysis={analysis} stones={analysis.content.result.stones.filter((stone) => stone.pattern !== null)} pictures="the photograph" onAnew={() => { onAnew(true); }} />
      </div>
    );
  }
  if (!piece.item.photographs.some((photograph) => photograph.light === 'polarised')) {
    return (
      <div className="page page-sheet">
        <Empty title="A photograph between crossed polarisers is needed">
          <p>Photograph the stone in transmitted light between crossed polarisers, the background dark, and add the photograph to the item with “crossed polarisers” as its light.</p>
        </Empty>
      </div>
    );
  }
  return <div className="page page-sheet"><StrainForm piece={piece} before={analysis} onRead={onOpen} onBack={analysis ? () => { onAnew(false); } : null} /></div>;
}

function StrainForm({ piece, before, onRead, onBack }: { readonly piece: PieceView; readonly before: AnalysisOf<'polarisers'> | undefined; readonly onRead: (analysisId: string) => void; readonly onBack: (() => void) | null }) {
  const photographs = piece.item.photographs.filter((photograph) => photograph.light !== 'drawing');
  const [photographId, setPhotograph] = useState(before?.content.parameters.photograph.photographId ?? photographs.findLast((photograph) => photograph.light === 'polarised')?.id ?? '');
  const usable = measurableMaps(piece).filter((map) => map.ground.kind === 'photograph' && map.ground.photographId === photographId);
  const [mapId, setMap] = useState<string | null>(usable[0]?.id ?? null);
  const read = useChange('images.polarisers');
  const chosen = photographs.find((photograph) => photograph.id === photographId);
  return (
    <form className="pair-form" onSubmit={(e) => { e.preventDefault(); read.mutate({ itemId: piece.item.id, photographId, mapId }, { onSuccess: (made) => { onRead(made.id); } }); }}>
      <h2>Read the strain pattern</h2>
      <div className="pair-sides">
        <div className="pair-side">
          <Choice label="Photograph" value={photographId} onChange={setPhotograph} options={photographs.map((photograph) => ({ value: photograph.id, label: `${photograph.caption || photograph.name} (${LIGHT_WORDS[photograph.light]})` }))} />
          {chosen ? <Thumbnail photograph={chosen} className="pair-thumb" /> : null}
        </div>
        <MapChoice piece={{ ...piece, maps: usable }} value={mapId} onChange={setMap} unmarked="the one stone that the photograph shows" />
      </div>
      {read.error ? <Trouble {...read.error.failure} /> : null}
      <div className="row gap12"><Button kind="main" type="submit" isDisabled={read.isPending || photographId === ''}>Read</Button>{onBack ? <Button onPress={onBack}>Back to the reading</Button> : null}{read.isPending ? <Working what="Reading the pattern" /> : null}</div>
    </form>
  );
}

/** A short line in the direction of the bands, or none. */
function Direction({ pattern }: { readonly pattern: StrainPattern }) {
  if (pattern.directionDegrees === null) return <>–</>;
  return <span className="row gap8"><svg className="strain-direction" viewBox="-10 -10 20 20" aria-hidden="true"><line x1={-8} x2={8} y1={0} y2={0} transform={`rotate(${-pattern.directionDegrees})`} /></svg>{Math.round(pattern.directionDegrees) % 180}°</span>;
}

function StrainTable({ piece, analysis }: { readonly piece: PieceView; readonly analysis: AnalysisOf<'polarisers'> }) {
  const labelOf = (stoneId: string | null) => piece.item.stones.find((stone) => stone.id === stoneId)?.label;
  return (
    <table className="pair-table measured-table">
      <caption className="hide">Strain of every stone</caption>
      <thead><tr><th scope="col">Stone</th><th scope="col">indication</th><th scope="col" className="right">confidence</th><th scope="col">direction</th><th scope="col" className="right">coherence</th><th scope="col" className="right">contrast</th><th scope="col" className="right">dark</th></tr></thead>
      <tbody>
        {analysis.content.result.stones.map(({ markId, number, stoneId, pattern }) => (
          <tr key={markId}>
            <th scope="row"><span className="mono">{number}</span> {labelOf(stoneId) ? <a href={placeAddress({ view: 'stone', id: stoneId! })}>{labelOf(stoneId)}</a> : null}</th>
            {pattern === null ? <td colSpan={6}>too small on the photograph to be read</td> : (
              <>
                <td>{INDICATION_WORDS[pattern.indication]}</td><td className="mono right">{Math.round(100 * pattern.confidence)} %</td><td className="mono"><Direction pattern={pattern} /></td>
                <td className="mono right">{pattern.coherence.toFixed(2)}</td><td className="mono right">{pattern.contrast.toFixed(2)}</td><td className="mono right">{Math.round(100 * pattern.dark)} %</td>
              </>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

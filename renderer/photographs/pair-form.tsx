import { useState } from 'react';
import type { PhotographView } from '../../app/contract/cases.ts';
import type { AnalysisOf } from '../../app/contract/images.ts';
import type { PieceView } from '../../app/contract/pieces.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { exifFacts } from '../piece/exif-words.ts';
import { LIGHT_WORDS } from '../piece/light-words.ts';
import { Thumbnail } from '../piece/thumbnail.tsx';
import { MapChoice, measurableMaps } from './map-choice.tsx';
import { useAskOnce, useChange } from '../queries.ts';

const named = (photograph: PhotographView): string => `${photograph.caption || photograph.name} (${LIGHT_WORDS[photograph.light]})`;

/** How the file says it was exposed, on one line. */
function exposureLine(exif: Parameters<typeof exifFacts>[0]): string {
  const told = exifFacts(exif).filter(({ name }) => ['Exposure', 'Aperture', 'Sensitivity'].includes(name)).map(({ text }) => text);
  return told.length > 0 ? told.join(' · ') : 'The file does not say how it was exposed.';
}

/** One side of the pair: which photograph, what it looks like, how its file says it was exposed. */
function Side({ label, photographs, value, onChange }: { readonly label: string; readonly photographs: readonly PhotographView[]; readonly value: string; readonly onChange: (id: string) => void }) {
  const chosen = photographs.find((photograph) => photograph.id === value);
  const facts = useAskOnce('images.facts', chosen ? { photographId: chosen.id } : null);
  return (
    <div className="pair-side">
      <Choice label={label} value={value} onChange={onChange} placeholder="Choose a photograph" options={photographs.map((photograph) => ({ value: photograph.id, label: named(photograph) }))} />
      {chosen ? <Thumbnail photograph={chosen} className="pair-thumb" /> : <span className="pair-thumb" />}
      <p className="quiet mono">{facts.data ? exposureLine(facts.data.exif) : facts.error ? facts.error.failure.message : ' '}</p>
    </div>
  );
}

/** Which two photographs are compared, with the marks of which map, and what the files do not say. */
export function PairForm({ piece, before, onCompared, onBack }: { readonly piece: PieceView; readonly before: AnalysisOf<'pair'> | undefined; readonly onCompared: (analysisId: string) => void; readonly onBack: (() => void) | null }) {
  const { item } = piece;
  const photographs = item.photographs.filter((photograph) => photograph.light !== 'drawing');
  const last = before?.content.parameters;
  const newest = (light: PhotographView['light']): string => photographs.filter((photograph) => photograph.light === light).at(-1)?.id ?? '';
  const [longWaveId, setLong] = useState(last?.longWave.photographId ?? newest('long-wave'));
  const [shortWaveId, setShort] = useState(last?.shortWave.photographId ?? newest('short-wave'));
  const [mapId, setMap] = useState<string | null>(last ? last.map?.mapId ?? null : measurableMaps(piece)[0]?.id ?? null);
  const [stops, setStops] = useState(last?.statedStops === null || last === undefined ? '' : String(last.statedStops));
  const [wrong, setWrong] = useState<string | undefined>();
  const compare = useChange('images.comparePair');
  const submit = () => {
    const stated = stops.trim() === '' ? null : Number(stops.replace(',', '.').replace('−', '-'));
    setWrong(stated !== null && !Number.isFinite(stated) ? 'Write a number of stops, for instance 1.5, or leave it empty.' : undefined);
    if (stated !== null && !Number.isFinite(stated)) return;
    compare.mutate({ itemId: item.id, longWaveId, shortWaveId, mapId, stops: stated }, { onSuccess: (made) => { onCompared(made.id); } });
  };
  const failure = compare.error?.failure;
  const fieldSentence = failure?.fields?.['stops'];
  return (
    <form className="pair-form" onSubmit={(e) => { e.preventDefault(); submit(); }}>
      <h2>Compare a pair of photographs</h2>
      <p className="second">Both are read in linear light and laid on one another; stray light is taken off and the exposure compensated. The records stay as they are.</p>
      <div className="pair-sides">
        <Side label="Long-wave, taken first" photographs={photographs} value={longWaveId} onChange={setLong} />
        <Side label="Short-wave" photographs={photographs} value={shortWaveId} onChange={setShort} />
      </div>
      <div className="row gap16 wrap pair-settings">
        <MapChoice piece={piece} value={mapId} onChange={setMap} />
        <Field label="Short-wave exposed more by" suffix="stops" mono value={stops} onChange={setStops} placeholder="from the files" error={wrong ?? fieldSentence} hint="Only where the files do not say it." />
      </div>
      {failure && fieldSentence === undefined ? <Trouble {...failure} /> : null}
      <div className="row gap12"><Button kind="main" type="submit" isDisabled={compare.isPending || longWaveId === '' || shortWaveId === ''}>Compare</Button>{onBack ? <Button onPress={onBack}>Back to the comparison</Button> : null}{compare.isPending ? <Working what="Reading and comparing" /> : null}</div>
    </form>
  );
}

import { useState } from 'react';
import type { PhotographView } from '../../app/contract/cases.ts';
import type { AnalysisOf } from '../../app/contract/images.ts';
import type { PieceView } from '../../app/contract/pieces.ts';
import { Button } from '../look/button.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { LIGHT_WORDS } from '../piece/light-words.ts';
import { Thumbnail } from '../piece/thumbnail.tsx';
import { useChange } from '../queries.ts';
import { MapChoice, measurableMaps } from './map-choice.tsx';

/** Seconds as typed; null where it is empty, NaN where it is no number. */
const secondsOf = (text: string | undefined): number | null => (text === undefined || text.trim() === '' ? null : Number(text.trim().replace(',', '.')));

/** Which photographs belong to the series, each with its seconds after the lamp. */
export function DecayForm({ piece, photographs, before, onMeasured, onBack }: {
  readonly piece: PieceView; readonly photographs: readonly PhotographView[]; readonly before: AnalysisOf<'decay'> | undefined;
  readonly onMeasured: (analysisId: string) => void; readonly onBack: (() => void) | null;
}) {
  const last = before?.content.parameters;
  const [times, setTimes] = useState<Readonly<Record<string, string>>>(Object.fromEntries((last?.frames ?? []).map((frame) => [frame.photographId, String(frame.seconds)])));
  const [mapId, setMap] = useState<string | null>(last ? last.map?.mapId ?? null : measurableMaps(piece)[0]?.id ?? null);
  const measure = useChange('images.decay');
  const frames = photographs.flatMap(({ id }) => { const seconds = secondsOf(times[id]); return seconds === null ? [] : [{ photographId: id, seconds }]; });
  const wrong = frames.some(({ seconds }) => !(seconds >= 0));
  const submit = () => { measure.mutate({ itemId: piece.item.id, mapId, frames }, { onSuccess: (made) => { onMeasured(made.id); } }); };
  return (
    <form className="pair-form" onSubmit={(e) => { e.preventDefault(); submit(); }}>
      <h2>Measure an after-glow</h2>
      <p className="second">Write beside each photograph of the series how many seconds after the lamp it was taken; leave the others empty.</p>
      <ul className="frame-rows">
        {photographs.map((photograph) => {
          const seconds = secondsOf(times[photograph.id]);
          return (
            <li key={photograph.id}>
              <Thumbnail photograph={photograph} className="thumb-line" />
              <span className="two-lines">{photograph.caption || photograph.name} <span className="quiet">{LIGHT_WORDS[photograph.light]}</span></span>
              <Field label={`Seconds after the lamp, ${photograph.caption || photograph.name}`} hideLabel mono suffix="s" className="frame-seconds" value={times[photograph.id] ?? ''}
                onChange={(text) => { setTimes({ ...times, [photograph.id]: text }); }} error={seconds !== null && !(seconds >= 0) ? 'Write seconds, for instance 2.5.' : undefined} />
            </li>
          );
        })}
      </ul>
      <div className="pair-settings"><MapChoice piece={piece} value={mapId} onChange={setMap} /></div>
      {measure.error ? <Trouble {...measure.error.failure} /> : null}
      <div className="row gap12">
        <Button kind="main" type="submit" isDisabled={measure.isPending || wrong || frames.length === 0}>Measure</Button>{onBack ? <Button onPress={onBack}>Back to the measurement</Button> : null}
        {measure.isPending ? <Working what="Reading and measuring" /> : <span className="quiet">{frames.length} of at least 3 photographs</span>}
      </div>
    </form>
  );
}

import { CAUTION_FIRST_LINE, CAUTIONS } from '../../app/domain/cautions.ts';
import type { Hazard } from '../../app/domain/method.ts';
import { Check } from '../look/choice.tsx';

/** What can hurt in this run; each part is confirmed by the person at the bench before the run is kept. */
export function CautionNotice({ hazards, acknowledged, onAcknowledged, error }: {
  readonly hazards: readonly Hazard[]; readonly acknowledged: readonly Hazard[]; readonly onAcknowledged: (hazards: readonly Hazard[]) => void; readonly error: string | undefined;
}) {
  if (hazards.length === 0) return null;
  return (
    <section className="caution" aria-label="Caution">
      <p className="caution-first">{CAUTION_FIRST_LINE}</p>
      {hazards.map((hazard) => {
        const caution = CAUTIONS[hazard];
        const confirmed = acknowledged.includes(hazard);
        return (
          <div key={hazard} className="caution-part">
            <h4>{caution.title}</h4>
            {confirmed ? null : <ul>{caution.sentences.map((sentence) => <li key={sentence}>{sentence}</li>)}</ul>}
            {confirmed ? null : <p className="quiet">Sources: {caution.source}.</p>}
            <Check label={`${caution.acknowledge}.`} checked={confirmed} onChange={(on) => { onAcknowledged(on ? [...acknowledged, hazard] : acknowledged.filter((other) => other !== hazard)); }} />
          </div>
        );
      })}
      {error ? <p className="field-error">{error}</p> : null}
    </section>
  );
}

import { formatCarat, formatGram } from '../../app/domain/weight.ts';
import type { IntakeForm } from './intake-state.ts';
import type { FieldSentences } from './intake-to-input.ts';
import { intakeTotals } from './intake-totals.ts';
import './intake.css';

/** What will be taken in, as the client will read it on the receipt, and what still keeps it from being taken in. */
export function IntakeMargin({ form, wrong, receivedBy, picturesTooLarge }: { readonly form: IntakeForm; readonly wrong: FieldSentences; readonly receivedBy: string; readonly picturesTooLarge: boolean }) {
  const t = intakeTotals(form);
  // One sentence may stand beside many fields.
  const faults = new Map<string, number>();
  for (const sentence of Object.values(wrong)) faults.set(sentence, (faults.get(sentence) ?? 0) + 1);
  return (
    <aside className="intake-margin">
      <p className="label">Will be taken in</p>
      <dl className="rows">
        <div><dt>Parcels</dt><dd className="mono">{form.parcels.length}</dd></div>
        <div><dt>Items</dt><dd className="mono">{t.items}</dd></div>
        <div><dt>Stones</dt><dd className="mono">{t.stones}</dd></div>
        {t.carat > 0 ? <div><dt>Weighed, carat</dt><dd className="mono">{formatCarat(t.carat)}</dd></div> : null}
        {t.gram > 0 ? <div><dt>Weighed, gram</dt><dd className="mono">{formatGram(t.gram)}</dd></div> : null}
        {t.unweighed > 0 ? <div><dt>Not weighed</dt><dd className="mono">{t.unweighed}</dd></div> : null}
        <div><dt>Received by</dt><dd>{receivedBy}</dd></div>
      </dl>
      {t.unweighed > 0 ? <p className="quiet">An item without a weight can be taken in; what goes out can then not be compared with what came in.</p> : null}
      {picturesTooLarge ? <p className="warn">The photographs together are too large to be kept in the draft: take the case in before closing, or add them later.</p> : null}
      {faults.size > 0 ? (
        <div role="alert">
          <p className="label">Before it can be taken in</p>
          <ul className="intake-faults">{[...faults].map(([sentence, times]) => <li key={sentence}>{sentence}{times > 1 ? <span className="mono"> × {times}</span> : null}</li>)}</ul>
        </div>
      ) : null}
      {t.colourOpen > 0 ? <p className="warn">{t.colourOpen === 1 ? 'One stone’s colour class is' : `The colour class of ${t.colourOpen} stones is`} not stated: no origin can be concluded before it is.</p> : null}
      <p className="quiet">Colour class decides which rules apply: the colourless screening says nothing about the origin of a coloured stone.</p>
    </aside>
  );
}

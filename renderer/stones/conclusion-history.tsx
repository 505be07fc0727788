import { SHOWN_LATER } from '../../app/conclusions/withhold.ts';
import type { ConclusionView, WithheldConclusion } from '../../app/contract/work.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { Glyph } from '../look/glyph.tsx';
import { showMoment } from '../look/time.ts';
import { LongText } from './long-text.tsx';
import { heading } from './proposal-note.tsx';
import { Rederived } from './rederived.tsx';

function Answer({ conclusion, zone }: { readonly conclusion: ConclusionView; readonly zone: string }) {
  const answer = conclusion.confirmation;
  if (!answer) return <p className="second">Waits for a second person.</p>;
  return answer.agrees
    ? <p className="second">Confirmed by {answer.by}, {showMoment(answer.at, zone)}.{answer.reason ? ` ${answer.reason}` : ''}</p>
    : <p className="warn">{answer.by} does not agree, {showMoment(answer.at, zone)}: {answer.reason}</p>;
}

/** What was concluded, by whom, and what the second person said; earlier conclusions stay in sight. */
export function ConclusionHistory({ conclusions, withheld, zone }: { readonly conclusions: readonly ConclusionView[]; readonly withheld: WithheldConclusion | null; readonly zone: string }) {
  if (withheld !== null) {
    return (
      <section className="concluded" aria-label="Conclusion">
        <p className="label">Concluded</p>
        <p>{heading(SHOWN_LATER)}.</p>
        <p className="note-from">{withheld.by}, {showMoment(withheld.at, zone)}</p>
        <p className="second">Waits for a second person, who reads first: look at the findings and the curves, and say what you conclude.</p>
      </section>
    );
  }
  const [newest, ...earlier] = conclusions.toSorted((a, b) => b.ordinal - a.ordinal);
  if (!newest) return null;
  return (
    <section className="concluded" aria-label="Conclusion">
      <p className="label">{newest.confirmation?.agrees ? 'Concluded and confirmed' : newest.confirmation ? 'Concluded, not agreed' : 'Concluded'}</p>
      <h3><Glyph of={newest.conclusion} /> <span>{heading(CONCLUSION_WORDS[newest.conclusion])}</span></h3>
      <LongText className="second concluded-reasons" text={newest.reasons} />
      {newest.departure ? <p className="second">Departs from the rules: {newest.departure}</p> : null}
      <p className="note-from">{newest.by}, {showMoment(newest.at, zone)}, {newest.rules}</p>
      <Rederived conclusion={newest} />
      <Answer conclusion={newest} zone={zone} />
      {earlier.length > 0 ? (
        <details className="concluded-earlier">
          <summary>{earlier.length === 1 ? 'One earlier conclusion' : `${earlier.length} earlier conclusions`}</summary>
          {earlier.map((c) => (
            <div key={c.id}>
              <p className="row gap8"><Glyph of={c.conclusion} /><span>{CONCLUSION_WORDS[c.conclusion]}</span></p>
              <p className="note-from">{c.by}, {showMoment(c.at, zone)}</p>
              <LongText className="second concluded-reasons" text={c.reasons} />
              <Answer conclusion={c} zone={zone} />
            </div>
          ))}
        </details>
      ) : null}
    </section>
  );
}

import type { LotView } from '../../app/contract/lots.ts';
import type { LotFigures } from '../../app/lots/lot-statement.ts';
import { outcomeRows, statementSentences } from '../../app/lots/statement-words.ts';
import { useHouse } from '../house/house-context.tsx';
import { Glyph } from '../look/glyph.tsx';
import { showMoment } from '../look/time.ts';

/** What the results say about the lot, what does not fit, and what was written into its book. */
export function LotMargin({ lot, figures, remarks }: { readonly lot: LotView; readonly figures: LotFigures | null; readonly remarks: readonly string[] }) {
  const { laboratory } = useHouse();
  return (
    <aside className="lot-margin">
      {remarks.length > 0 ? <section aria-label="What does not fit"><p className="label warn">What does not fit</p>{remarks.map((remark) => <p key={remark} className="warn lot-remark">{remark}</p>)}</section> : null}
      <section aria-label="What the lot says" aria-live="polite">
        <h2>What the lot says</h2>
        {figures === null ? <p className="second">Count the lot, make a plan, and enter what each stone shows.</p> : (
          <>
            <dl className="lot-figures">
              {outcomeRows(figures).map((row) => <div key={row.outcome}><dt><Glyph of={row.outcome} />{row.words}</dt><dd className="mono">{row.count}</dd></div>)}
              <div><dt>untested</dt><dd className="mono">{figures.untested}</dd></div>
              <div className="lot-figures-sum"><dt>stones in the lot</dt><dd className="mono">{figures.lot}</dd></div>
            </dl>
            <div className="lot-says">{statementSentences(figures, lot.plan?.content ?? null).map((sentence) => <p key={sentence}>{sentence}</p>)}</div>
          </>
        )}
      </section>
      {lot.book.length > 0 ? (
        <section aria-label="The lot’s book">
          <p className="label">The lot’s book</p>
          <ol className="lot-book">{lot.book.map((line) => <li key={line.ordinal}><p className="two-lines" title={line.words}>{line.words}</p><span className="quiet">{line.by}, {showMoment(line.at, laboratory.zone)}</span></li>)}</ol>
        </section>
      ) : null}
    </aside>
  );
}

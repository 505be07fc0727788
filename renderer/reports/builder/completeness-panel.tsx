import type { LookedDraft, WordRemark } from '../../../app/contract/report-drafts.ts';
import { Field } from '../../look/field.tsx';
import { WordNotes } from './word-notes.tsx';

type Clause = LookedDraft['clauses'][number];

/** One clause that is open: what to do, or why it does not apply here. */
function OpenClause({ clause, reason, words, onReason }: { readonly clause: Clause; readonly reason: string; readonly words: readonly WordRemark[]; readonly onReason: (text: string) => void }) {
  return (
    <li className={clause.state === 'missing' ? 'clause-open' : 'clause-apart'}>
      <p className="row gap8"><span className="mono quiet">{clause.clause}</span><span className="second">{clause.asks}</span></p>
      {clause.missing.map((sentence) => <p key={sentence}>{sentence}</p>)}
      {clause.mayNotApply ? <Field label={`${clause.clause} does not apply, because`} value={reason} onChange={onReason} placeholder="leave empty where it applies" /> : null}
      <WordNotes words={words} field={`clause ${clause.key}`} />
    </li>
  );
}

/** What has to be done before the report can be issued: a clause may ask several things, one of each stone for instance. */
export const openPoints = (clauses: readonly Clause[]): number =>
  clauses.reduce((sum, clause) => sum + (clause.state === 'missing' ? Math.max(1, clause.missing.length) : 0), 0);

/** How the report stands with ISO/IEC 17025:2017, 7.8.2 to 7.8.8: first what is missing, then everything, with where it stands. */
export function CompletenessPanel(p: {
  readonly clauses: readonly Clause[]; readonly words: readonly WordRemark[]; readonly reasons: Readonly<Record<string, string>>; readonly onReasons: (reasons: Record<string, string>) => void;
}) {
  const write = (key: string) => (text: string) => {
    const { [key]: _before, ...others } = p.reasons;
    p.onReasons(text === '' ? others : { ...others, [key]: text });
  };
  // A clause that is answered by a reason stays with its field, so that the reason can be read and changed.
  const open = p.clauses.filter((clause) => clause.state === 'missing' || (p.reasons[clause.key] ?? '') !== '');
  const missing = openPoints(p.clauses);
  const rest = p.clauses.filter((clause) => !open.includes(clause));
  return (
    <section className="builder-part" aria-label="Completeness">
      <h3>{missing === 0 ? 'Nothing is missing' : `${missing} ${missing === 1 ? 'point is' : 'points are'} open`}</h3>
      <p className="quiet">After ISO/IEC 17025:2017, 7.8.2 to 7.8.8.</p>
      <ul className="clauses">
        {open.map((clause) => <OpenClause key={clause.key} clause={clause} reason={p.reasons[clause.key] ?? ''} words={p.words} onReason={write(clause.key)} />)}
      </ul>
      <details className="clauses-met">
        <summary>{rest.length} points that stand</summary>
        <dl>
          {rest.map((clause) => (
            <div key={clause.key}>
              <dt className="row gap8"><span className="mono quiet">{clause.clause}</span><span>{clause.asks}</span></dt>
              <dd className="quiet">{clause.state === 'not-applicable' ? `does not apply: ${clause.where}` : clause.where}</dd>
              {clause.mayNotApply && clause.state === 'met' ? <dd><Field label="Does not apply, because" value="" onChange={write(clause.key)} placeholder="leave empty where it applies" /></dd> : null}
            </div>
          ))}
        </dl>
      </details>
    </section>
  );
}

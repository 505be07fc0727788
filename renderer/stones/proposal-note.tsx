import type { Proposal } from '../../app/evidence/proposal.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { METHODS, type MethodId } from '../../app/domain/method.ts';
import { Glyph } from '../look/glyph.tsx';
import { EvidenceChain } from './evidence-chain.tsx';
import { WithNumbers } from './with-numbers.tsx';

/** Upper-case first letter: the words stand as a heading here. */
export const heading = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function List({ title, kind, sentences }: { readonly title: string; readonly kind: 'against' | 'missing'; readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return <><p className="label">{title}</p><ul className={`proposal-list proposal-${kind}`}>{sentences.map((s) => <li key={s}><WithNumbers text={s} /></li>)}</ul></>;
}

/** What the findings amount to by the rules, said openly; and what would settle it. */
export function ProposalNote({ proposal, onTest }: { readonly proposal: Proposal; readonly onTest: (method: MethodId) => void }) {
  return (
    <>
      <header className="proposal-head">
        <p className="label">Proposed, {proposal.rules}</p>
        <h3><Glyph of={proposal.conclusion} /> <span>{heading(CONCLUSION_WORDS[proposal.conclusion])}</span></h3>
      </header>
      <section className="proposal" aria-label="Proposed conclusion">
        {proposal.reasons.map((reason) => <p key={reason} className="second"><WithNumbers text={reason} /></p>)}
        <List title="Against it" kind="against" sentences={proposal.against} />
        <List title="Missing" kind="missing" sentences={proposal.missing} />
        {proposal.nextTests.length > 0 ? (
          <>
            <p className="label">{proposal.nextTests[0]!.why.startsWith('would settle it') ? 'Would settle it' : 'Next tests'}</p>
            <ul className="proposal-next">
              {proposal.nextTests.map((next) => (
                <li key={next.method}><button type="button" onClick={() => { onTest(next.method); }}><span>{METHODS[next.method].name}</span><span className="quiet"> — {next.why.replace(/^would settle it: /, '')}</span>{next.caution === undefined ? null : <span className="next-caution">{next.caution}</span>}</button></li>
              ))}
            </ul>
          </>
        ) : null}
        <EvidenceChain proposal={proposal} />
      </section>
    </>
  );
}

import { HYPOTHESIS_IDS, HYPOTHESIS_WORDS } from '../../app/evidence/hypothesis.ts';
import type { ChainLink, Proposal } from '../../app/evidence/proposal.ts';
import { WithNumbers } from './with-numbers.tsx';

const ROLE_WORDS: Readonly<Record<ChainLink['role'], string>> = { decides: 'Decides', adds: 'Speaks the same way', weighs: 'Has weight', against: 'Speaks against', noted: 'Recorded, decides nothing', ignored: 'Does not count' };
const ROLES = Object.keys(ROLE_WORDS) as ChainLink['role'][];

/** How each finding was weighed, and how the hypotheses stand after all of them. Folded: the proposal above says the outcome. */
export function EvidenceChain({ proposal }: { readonly proposal: Proposal }) {
  const { chain, hypotheses, table } = proposal;
  if (chain === undefined || hypotheses === undefined || chain.length === 0) return null;
  return (
    <details className="chain">
      <summary>How each finding was weighed</summary>
      <dl className="chain-stand">
        {HYPOTHESIS_IDS.map((id) => {
          const one = hypotheses.find((entry) => entry.id === id);
          return one === undefined ? null : <div key={id}><dt>{HYPOTHESIS_WORDS[id]}</dt><dd>{one.standing}</dd><dd className="mono" title={`${one.for.length} findings for it, ${one.against.length} against`}>+{one.for.length} −{one.against.length}</dd></div>;
        })}
      </dl>
      {ROLES.map((role) => {
        const links = chain.filter((link) => link.role === role);
        return links.length === 0 ? null : (
          <div key={role}>
            <p className="label">{ROLE_WORDS[role]}</p>
            <ul className="proposal-list">{links.map((link) => <li key={`${link.finding} ${link.code}`}><WithNumbers text={link.sentence} /></li>)}</ul>
          </div>
        );
      })}
      <p className="quiet">{table}</p>
    </details>
  );
}

import type { AgreementOutcome } from '../../app/contract/figures.ts';
import { CONCLUSION_SHORT, CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { shareWords } from '../../app/history/share-words.ts';
import { agreementCsv } from '../../app/history/figures-csv.ts';
import { Button } from '../look/button.tsx';
import { saveFile } from '../look/save-file.ts';
import { useHouse } from '../house/house-context.tsx';

type Table = AgreementOutcome['readFirst'];

function CrossTable({ table, name }: { readonly table: Table; readonly name: string }) {
  return (
    <div className="figures-scroll" tabIndex={0} role="region" aria-label={name}>
      <table className="plain-table">
        <thead><tr><th>First person ↓ · second →</th>{table.outcomes.map((id) => <th key={id} className="to-right" scope="col" title={CONCLUSION_WORDS[id]}>{CONCLUSION_SHORT[id]}</th>)}</tr></thead>
        <tbody>{table.outcomes.map((first, i) => (
          <tr key={first}><th scope="row" className="wraps">{CONCLUSION_WORDS[first]}</th>{table.outcomes.map((second, j) => <td key={second} className={`mono to-right ${i === j ? 'is-same' : ''}`}>{table.counts[i]![j]!.toLocaleString('en')}</td>)}</tr>
        ))}</tbody>
      </table>
    </div>
  );
}

function kappaWords({ kappa, standardError, limits, byChance }: Table): string {
  if (kappa === null) return 'Kappa is not defined: both always said one and the same thing, and then agreement cannot be told from chance.';
  return `Cohen’s kappa ${kappa.toFixed(3)}${limits === null ? ', of too few stones for limits' : `, standard error ${(standardError ?? 0).toFixed(3)}, 95 % limits ${limits.low.toFixed(2)} to ${limits.high.toFixed(2)}`}; by chance alone ${((byChance ?? 0) * 100).toFixed(0)} % would agree.`;
}

/** How well second persons agree with the first: as two readings where they were, else as the confirmation that it is. */
export function AgreementSection({ agreement }: { readonly agreement: AgreementOutcome }) {
  const { laboratory } = useHouse();
  const { readFirst, seen, unstated } = agreement;
  return (
    <section className="figures-section" aria-label="Agreement of two persons">
      <h2>Agreement of two persons</h2>
      <h3>Own conclusion stated before the first was shown</h3>
      {readFirst.n === 0
        ? <p className="figures-said">No answer of this kind in the period. {laboratory.settings.secondReadsFirst ? 'What is concluded from now on is withheld from the second person until they have stated theirs.' : 'To measure it, let the second person state a conclusion first: House, laboratory, “the second person reads first”.'}</p>
        : <>
          <p className="figures-said">The same conclusion: {shareWords(readFirst.observed)}. {kappaWords(readFirst)}</p>
          <CrossTable table={readFirst} name="Own conclusion stated first, table" />
          <p className="quiet">Cohen 1960; standard error after Fleiss, Cohen and Everitt 1969, rough below some thirty stones. The same share of agreement can go with different kappas, so read the table. The first conclusion was withheld from the second person, on every page and in every file, until theirs was written down. What was told by word of mouth, or read in a copy of the casebook outside this program, cannot be known.</p>
        </>}
      <h3>Answered with the first conclusion in sight</h3>
      {seen.n === 0 && unstated === 0 ? <p className="figures-said">No answer of this kind in the period.</p> : (
        <>
          <p className="figures-said">Confirmed or concluded the same: {shareWords(seen.observed)}{unstated > 0 ? `; besides, ${unstated === 1 ? 'one disagreement' : `${unstated} disagreements`} without a conclusion of one’s own` : ''}. This is confirmation, not a second reading: no kappa is computed from it. Here count conclusions from before the second person had to read first, those that somebody asked to see without stating theirs, and those of a stone of which an earlier conclusion was known to them.</p>
          {seen.n > 0 ? <CrossTable table={seen} name="Answered with the first in sight, table" /> : null}
        </>
      )}
      {readFirst.n + seen.n > 0 ? <div><Button kind="quiet" onPress={() => { saveFile('agreement.csv', 'text/csv', agreementCsv(agreement)); }}>Save the agreement as CSV</Button></div> : null}
    </section>
  );
}

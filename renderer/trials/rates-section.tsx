import { useState } from 'react';
import type { TrialsOutcome } from '../../app/contract/figures.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { RATES, ratesCsv } from '../../app/history/figures-csv.ts';
import { perCent, shareWords } from '../../app/history/share-words.ts';
import { missedAmongPassed, missedAtMost, TRUTHS } from '../../app/statistics/screening-figures.ts';
import { Button } from '../look/button.tsx';
import { Segmented } from '../look/choice.tsx';
import { Field } from '../look/field.tsx';
import { readNumber } from '../look/read-number.ts';
import { saveFile } from '../look/save-file.ts';

type Rates = TrialsOutcome['blind'];

/** What the trials say of the house, with exact limits, and what that means for a stone that was said to be natural. */
export function RatesSection({ blind, all, assumedNotNatural }: { readonly blind: Rates; readonly all: Rates; readonly assumedNotNatural: number }) {
  const [which, setWhich] = useState<'blind' | 'all'>('blind');
  const [assumed, setAssumed] = useState(String(assumedNotNatural));
  const rates = which === 'blind' ? blind : all;
  const prevalence = readNumber(assumed);
  const isShare = prevalence !== undefined && prevalence >= 0 && prevalence <= 100;
  const missed = isShare ? missedAmongPassed(rates, prevalence / 100) : Number.NaN;
  const atMost = isShare ? missedAtMost(rates, prevalence / 100) : Number.NaN;
  return (
    <section className="figures-section" aria-label="What the trials say">
      <h2>What the trials say</h2>
      <div><Segmented label="Which trials" value={which} onChange={setWhich} options={[{ value: 'blind', label: 'examiner did not know' }, { value: 'all', label: 'all trials' }]} /></div>
      {rates.referred.of === 0 ? <p className="figures-said">No trial of this kind in the period. Without trials nobody can say how often the house is wrong.</p> : (
        <div className="figures-pair">
          <div className="figures-scroll" tabIndex={0} role="region" aria-label="Rates, table">
            <table className="plain-table">
              <thead><tr><th>Rate</th><th>Count (exact 95 % limits)</th><th className="to-right">At most, one-sided</th></tr></thead>
              <tbody>{RATES.map(({ key, name, says }) => <tr key={key}><td className="wraps">{name}<br /><span className="quiet">{says}</span></td><td className="mono">{shareWords(rates[key])}</td><td className="mono to-right">{rates[key].of === 0 ? '–' : perCent(rates[key].atMost)}</td></tr>)}</tbody>
            </table>
          </div>
          <div>
            <div className="figures-scroll" tabIndex={0} role="region" aria-label="By origin, table">
              <table className="plain-table">
                <thead><tr><th>It is</th><th className="to-right">Trials</th><th className="to-right">Said natural</th><th className="to-right">Said otherwise</th><th className="to-right">Sent on</th></tr></thead>
                <tbody>{TRUTHS.map((truth) => { const row = rates.byTruth[truth]; return <tr key={truth}><td className="wraps">{CONCLUSION_WORDS[truth]}</td>{[row.all, row.passed, row.flagged, row.referred].map((n, i) => <td key={`${i}`} className="mono to-right">{n}</td>)}</tr>; })}</tbody>
              </table>
            </div>
            <div className="trials-assumed"><Field label="Assumed share that is not natural among what comes in, per cent" mono value={assumed} onChange={setAssumed} error={isShare ? undefined : 'Write a number from 0 to 100.'} /></div>
            <p className="figures-said">{Number.isNaN(missed) ? 'For a stone that was said to be natural nothing can be computed from these trials.' : `Of stones that are said to be natural, ${missed === 0 ? `none (${rates.falseNatural.count} of ${rates.falseNatural.of} missed)` : perCent(missed)} would then not be if the house misses as many as it did in these trials, and ${perCent(atMost)} if it misses as many as the one-sided limit of ${perCent(rates.falseNatural.atMost)} still allows (both with the share of natural stones that passed in these trials). The share that comes in is an assumption, no finding; the house assumes ${assumedNotNatural} % (House, laboratory).`}</p>
            <div><Button kind="quiet" isDisabled={!isShare} onPress={() => { if (isShare) saveFile('rates.csv', 'text/csv', ratesCsv({ blind, all }, prevalence)); }}>Save the rates as CSV</Button></div>
          </div>
        </div>
      )}
      <p className="quiet">Stones sent on stay in every count: a house that sends everything on misses nothing and helps nobody. Limits after Clopper and Pearson 1934.</p>
    </section>
  );
}

import { useMemo } from 'react';
import type { FiguresOutcome } from '../../app/contract/figures.ts';
import { CONCLUSION_IDS, CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { perCent, shareWords } from '../../app/history/share-words.ts';
import { Glyph } from '../look/glyph.tsx';
import { StepPlot, type PlotSeries } from './step-plot.tsx';

const days = (value: number | undefined): string => (value === undefined ? '–' : value.toFixed(1));
const count = (value: number): string => value.toLocaleString('en');

/** What came, what went, how long it took, and how it ended, step by step. */
export function OverTimeSection({ figures }: { readonly figures: FiguresOutcome }) {
  const { steps, whole } = figures;
  const labels = useMemo(() => steps.map((step) => (step.isPart ? `${step.label}*` : step.label)), [steps]);
  const flow = useMemo((): PlotSeries[] => [
    { kind: 'bars', name: 'cases received', ink: 'accent', values: steps.map((s) => s.received) },
    { kind: 'bars', name: 'stones settled', ink: 'natural', hatch: '/', values: steps.map((s) => s.settled) },
    { kind: 'bars', name: 'reports issued', ink: 'cvd', hatch: '.', values: steps.map((s) => s.reported) },
    { kind: 'points', name: 'cases open at the end', ink: 'ink', joined: true, dash: 'dash', values: steps.map((s) => s.open) },
  ], [steps]);
  const took = useMemo((): PlotSeries[] => [{
    kind: 'points', name: 'median, with the quartiles', ink: 'accent', joined: true, values: steps.map((s) => s.turnaround?.median ?? null),
    limits: steps.map((s) => (s.turnaround === null ? null : { low: s.turnaround.lower, high: s.turnaround.upper })),
  }], [steps]);
  const further = useMemo((): PlotSeries[] => [{
    kind: 'points', name: 'share sent further', ink: 'hpht', joined: false, values: steps.map(({ sentFurther: s }) => (s.of === 0 ? null : (s.count / s.of) * 100)),
    limits: steps.map(({ sentFurther: s }) => (s.of === 0 ? null : { low: s.limits.low * 100, high: s.limits.high * 100 })),
  }], [steps]);
  return (
    <>
      <section className="figures-section" aria-label="Throughput and turnaround">
        <h2>Throughput and turnaround</h2>
        <div className="figures-pair">
          <div>
            <h3>What came and what went</h3>
            <StepPlot name="Cases received, stones settled, reports issued and cases open, for each step" labels={labels} series={flow} unit="number" />
            <p className="figures-said">A stone is settled when a second person agreed with the conclusion that stands today. A case is open until its first report, or until it was given back without one. {figures.knownSamples > 0 ? `Left out: ${figures.knownSamples === 1 ? 'one known sample' : `${figures.knownSamples} known samples`}.` : ''}</p>
          </div>
          <div>
            <h3>Days from receipt to report</h3>
            <StepPlot name="Median and quartiles of the days from receipt to report, for each step" labels={labels} series={took} unit="days" />
            <p className="figures-said">Of each report at its first issue, counted where it was issued: median, with bars from the lower to the upper quartile (definition 7 of Hyndman and Fan, 1996). In the whole period: {whole.turnaround === null ? 'no report issued' : `median ${days(whole.turnaround.median)}, quartiles ${days(whole.turnaround.lower)} and ${days(whole.turnaround.upper)}, longest ${days(whole.turnaround.greatest)} days, of ${count(whole.turnaround.n)}`}.</p>
          </div>
        </div>
        <div className="figures-scroll" tabIndex={0} role="region" aria-label="Throughput and turnaround, table">
          <table className="plain-table">
            <thead><tr><th>Step</th>{['Cases received', 'Stones settled', 'Reports issued', 'Amended', 'Withdrawn', 'Cases open at the end', 'Reports timed', 'Lower quartile', 'Median days', 'Upper quartile'].map((head) => <th key={head} className="to-right">{head}</th>)}</tr></thead>
            <tbody>{steps.map((s, i) => <Row key={s.label + s.from} name={labels[i]!} of={s} />)}</tbody>
            <tfoot><Row name="whole period" of={whole} /></tfoot>
          </table>
        </div>
        {steps.some((s) => s.isPart) ? <p className="quiet">* The period cuts this step short.</p> : null}
      </section>
      <section className="figures-section" aria-label="Conclusions and what was sent further">
        <h2>Conclusions, and what was sent further</h2>
        <div className="figures-pair">
          <div>
            <h3>Share sent further</h3>
            <StepPlot name="Share of settled stones that were sent further, for each step" labels={labels} series={further} unit="per cent" />
            <p className="figures-said">Stones whose standing conclusion is “{CONCLUSION_WORDS.undetermined}”, of all stones settled; bars are exact 95 % limits (Clopper and Pearson). In the whole period: {shareWords(whole.sentFurther)}.</p>
          </div>
          <div>
            <h3>In the whole period</h3>
            <table className="plain-table">
              <thead><tr><th>Conclusion</th><th className="to-right">Stones</th><th className="to-right">Of all settled</th></tr></thead>
              <tbody>{CONCLUSION_IDS.map((id) => (
                <tr key={id}><td className="wraps"><span className="row gap8"><Glyph of={id} /> {CONCLUSION_WORDS[id]}</span></td><td className="mono to-right">{count(whole.outcomes[id])}</td><td className="mono to-right">{whole.settled === 0 ? '–' : perCent(whole.outcomes[id] / whole.settled)}</td></tr>
              ))}</tbody>
              <tfoot><tr><td>all</td><td className="mono to-right">{count(whole.settled)}</td><td /></tr></tfoot>
            </table>
          </div>
        </div>
        <div className="figures-scroll" tabIndex={0} role="region" aria-label="Sent further, table">
          <table className="plain-table">
            <thead><tr><th>Step</th><th className="to-right">Settled</th><th>Sent further (95 % limits)</th><th className="to-right">Outside the scope</th></tr></thead>
            <tbody>{steps.map((s, i) => <tr key={s.label + s.from}><td className="mono">{labels[i]}</td><td className="mono to-right">{count(s.settled)}</td><td className="mono">{shareWords(s.sentFurther)}</td><td className="mono to-right">{count(s.outcomes['out-of-scope'])}</td></tr>)}</tbody>
          </table>
        </div>
      </section>
    </>
  );
}

function Row({ name, of: f }: { readonly name: string; readonly of: FiguresOutcome['whole'] }) {
  const numbers = [count(f.received), count(f.settled), count(f.reported), count(f.amended), count(f.withdrawn), count(f.open), count(f.turnaround?.n ?? 0), days(f.turnaround?.lower), days(f.turnaround?.median), days(f.turnaround?.upper)];
  // Columns never move: their place is their key.
  return <tr><td className="mono">{name}</td>{numbers.map((text, i) => <td key={`${i}`} className="mono to-right">{text}</td>)}</tr>;
}

import { useMemo } from 'react';
import type { CheckSeries } from '../../app/contract/figures.ts';
import { checksCsv } from '../../app/history/figures-csv.ts';
import { CONTROL_RULES, FEWEST_FOR_LIMITS, type ControlRule } from '../../app/statistics/control-chart.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { saveFile } from '../look/save-file.ts';
import { showDay } from '../look/time.ts';
import { StepPlot, type PlotLine, type PlotSeries } from './step-plot.tsx';

/** As many digits as were entered. */
const digitsOf = ({ points }: CheckSeries): number => Math.min(6, Math.max(...points.map(({ value }) => (String(value).split('.')[1] ?? '').length)));

function linesOf({ limits, expected, tolerance }: CheckSeries): PlotLine[] {
  return [
    ...(limits === null ? [] : [
      { at: limits.mean, ink: 'ink3' as const, dash: 'solid' as const, name: 'mean' }, { at: limits.low, ink: 'ink3' as const, dash: 'dash' as const, name: 'lower limit' }, { at: limits.high, ink: 'ink3' as const, dash: 'dash' as const, name: 'upper limit' },
    ]),
    ...(expected === null ? [] : [{ at: expected, ink: 'natural' as const, dash: 'dot' as const, name: 'expected' }]),
    ...(expected === null || tolerance === null ? [] : [{ at: expected - tolerance, ink: 'warn' as const, dash: 'dot' as const, name: 'tolerance below' }, { at: expected + tolerance, ink: 'warn' as const, dash: 'dot' as const, name: 'tolerance above' }]),
  ];
}

const isOut = (passed: boolean, signals: readonly string[]): boolean => !passed || signals.length > 0;

function Chart({ series }: { readonly series: CheckSeries }) {
  const { laboratory } = useHouse();
  const { points, limits, unit, upToEnd } = series;
  const digits = digitsOf(series);
  const labels = useMemo(() => points.map((p, i) => `${i + 1} · ${showDay(p.at, laboratory.zone)}`), [points, laboratory.zone]);
  const drawn = useMemo((): PlotSeries[] => [{ kind: 'points', name: series.quantity, ink: 'accent', joined: true, values: points.map((p) => p.value), symbol: points.map((p) => (isOut(p.passed, p.signals) ? 'diamond-open' : 'circle')) }], [points, series.quantity]);
  const lines = useMemo(() => linesOf(series), [series]);
  const out = points.filter((p) => isOut(p.passed, p.signals));
  const title = `${series.instrument}: ${series.quantity}`;
  return (
    <div className="figures-pair">
      <div>
        <h3>{title}</h3>
        <StepPlot name={`${title}, check by check`} labels={labels} series={drawn} lines={lines} unit={unit || 'value'} fromZero={false} />
        <p className="figures-said">{limits === null
          ? upToEnd < FEWEST_FOR_LIMITS ? `No limits yet: they need at least ${FEWEST_FOR_LIMITS} checks, and there ${upToEnd === 1 ? 'is one' : `are ${upToEnd}`}.` : 'No limits: the first values are all the same.'
          : `Mean ${limits.mean.toFixed(digits + 1)} ${unit}, limits ${limits.low.toFixed(digits + 1)} to ${limits.high.toFixed(digits + 1)} (mean ± 2.66 mean moving ranges of the first ${limits.from} checks ever recorded of it).`}</p>
        {out.length === 0
          ? <p className="figures-said">Nothing stands out.</p>
          : <p className="figures-said">{out.length === 1 ? 'One check stands out' : `${out.length} checks stand out`} (◇): repeat the check; if it stays so, look at what changed, calibrate, and consider the runs since the last check that was in order (common practice, no source).</p>}
      </div>
      <div className="figures-scroll" tabIndex={0} role="region" aria-label={`${title}, table`} style={{ maxHeight: 300 }}>
        <table className="plain-table">
          <thead><tr><th>Day</th><th className="to-right">Value{unit === '' ? '' : `, ${unit}`}</th><th>By</th><th>What stands out</th></tr></thead>
          <tbody>{points.toReversed().map((p, i) => <tr key={`${p.at}${i}`}><td className="mono">{showDay(p.at, laboratory.zone)}</td><td className="mono to-right">{p.value.toFixed(digits)}</td><td>{p.by}</td><td className="wraps">{[...(p.passed ? [] : ['not in order']), ...p.signals.map((signal) => CONTROL_RULES[signal as ControlRule])].join('; ')}</td></tr>)}</tbody>
        </table>
      </div>
    </div>
  );
}

/** Checks of instruments that gave a number, as charts of individual values. */
export function ChecksSection({ series, withoutNumber }: { readonly series: readonly CheckSeries[]; readonly withoutNumber: number }) {
  return (
    <section className="figures-section" aria-label="Instrument checks">
      <h2>Instrument checks</h2>
      {series.length === 0 ? <p className="figures-said">No check of the period gave a number. Enter what was measured with the check of an instrument, and its course is drawn here.</p> : series.map((one) => <Chart key={`${one.instrumentId}${one.quantity}${one.unit}`} series={one} />)}
      {series.length > 0 ? <div><Button kind="quiet" onPress={() => { saveFile('instrument-checks.csv', 'text/csv', checksCsv(series)); }}>Save the checks as CSV</Button></div> : null}
      {withoutNumber > 0 ? <p className="quiet">{withoutNumber === 1 ? 'One check' : `${withoutNumber} checks`} of the period said only in words what came out, and {withoutNumber === 1 ? 'is' : 'are'} not drawn.</p> : null}
    </section>
  );
}

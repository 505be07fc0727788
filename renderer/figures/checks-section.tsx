import { useMemo } from 'react';
import type { CheckSeries } from '../../app/contract/figures.ts';
import { capitalised } from '../../app/evidence/sentences.ts';
import { checksCsv } from '../../app/history/figures-csv.ts';
import { CONTROL_RULES, FEWEST_FOR_LIMITS, type ControlRule } from '../../app/statistics/control-chart.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { saveFile } from '../look/save-file.ts';
import { showDay } from '../look/time.ts';
import { StepPlot, type PlotBreak, type PlotLine, type PlotSeries } from './step-plot.tsx';

/** As many digits as were entered. */
const digitsOf = ({ points }: CheckSeries): number => Math.min(6, Math.max(...points.map(({ value }) => (String(value).split('.')[1] ?? '').length)));

/** Expected value and tolerance as they stood at each check; limits of each stretch, cut where one begins anew. */
function linesOf({ points, bases }: CheckSeries, cuts: readonly number[]): PlotLine[] {
  const limitsOf = (key: 'mean' | 'low' | 'high') => points.map(({ base }) => bases[base]!.limits?.[key] ?? null);
  const around = (side: -1 | 1) => points.map(({ expected, tolerance }) => (expected === null || tolerance === null ? null : expected + side * tolerance));
  const lines: PlotLine[] = [
    { values: limitsOf('mean'), ink: 'ink3', dash: 'solid', name: 'mean', cuts }, { values: limitsOf('low'), ink: 'ink3', dash: 'dash', name: 'lower limit', cuts }, { values: limitsOf('high'), ink: 'ink3', dash: 'dash', name: 'upper limit', cuts },
    { values: points.map(({ expected }) => expected), ink: 'natural', dash: 'dot', name: 'expected' },
    { values: around(-1), ink: 'warn', dash: 'dot', name: 'tolerance below' }, { values: around(1), ink: 'warn', dash: 'dot', name: 'tolerance above' },
  ];
  return lines.filter(({ values }) => values.some((value) => value !== null));
}

/** "Mean 546.08 nm, limits …" of one stretch, or why it has none. */
function limitsWords({ limits, checks }: CheckSeries['bases'][number], unit: string, digits: number): string {
  if (limits !== null) return `mean ${limits.mean.toFixed(digits + 1)} ${unit}, limits ${limits.low.toFixed(digits + 1)} to ${limits.high.toFixed(digits + 1)} (mean ± 2.66 mean moving ranges of its first ${limits.from} checks)`;
  return checks < FEWEST_FOR_LIMITS ? `no limits yet: they need at least ${FEWEST_FOR_LIMITS} checks, and there ${checks === 1 ? 'is one' : `are ${checks}`}` : 'no limits: the first values are all the same';
}

const sentence = (words: string): string => `${capitalised(words)}.`;

const isOut = (passed: boolean, signals: readonly string[]): boolean => !passed || signals.length > 0;

function Chart({ series }: { readonly series: CheckSeries }) {
  const { laboratory } = useHouse();
  const { points, bases, unit } = series;
  const digits = digitsOf(series);
  const labels = useMemo(() => points.map((p, i) => `${i + 1} · ${showDay(p.at, laboratory.zone)}`), [points, laboratory.zone]);
  const drawn = useMemo((): PlotSeries[] => [{ kind: 'points', name: series.quantity, ink: 'accent', joined: true, values: points.map((p) => p.value), symbol: points.map((p) => (isOut(p.passed, p.signals) ? 'diamond-open' : 'circle')) }], [points, series.quantity]);
  const breaks = useMemo((): PlotBreak[] => points.flatMap((p, i) => (bases[p.base]!.service !== null && (i === 0 ? p.at === bases[p.base]!.at : points[i - 1]!.base !== p.base) ? [{ before: i, words: 'after service' }] : [])), [points, bases]);
  const lines = useMemo(() => linesOf(series, breaks.map(({ before }) => before)), [series, breaks]);
  const first = Math.min(...points.map(({ base }) => base));
  const out = points.filter((p) => isOut(p.passed, p.signals));
  const startsBase = (p: CheckSeries['points'][number]): boolean => bases[p.base]!.service !== null && bases[p.base]!.at === p.at;
  const title = `${series.instrument}: ${series.quantity}`;
  return (
    <div className="figures-pair">
      <div>
        <h3>{title}</h3>
        <StepPlot name={`${title}, check by check`} labels={labels} series={drawn} lines={lines} breaks={breaks} unit={unit || 'value'} fromZero={false} />
        {bases.map((base, i) => (i < first ? null : (
          <p key={base.at} className="figures-said">{base.service === null ? sentence(`${bases.length > 1 ? 'before the first service: ' : ''}${limitsWords(base, unit, digits)}`) : sentence(`after the service of ${showDay(base.service.at, laboratory.zone)} (${base.service.words}): ${limitsWords(base, unit, digits)}`)}</p>
        )))}
        {out.length === 0
          ? <p className="figures-said">Nothing stands out.</p>
          : <p className="figures-said">{out.length === 1 ? 'One check stands out' : `${out.length} checks stand out`} (◇): repeat the check; if it stays so, look at what changed, calibrate, and consider the runs since the last check that was in order (common practice, no source).</p>}
      </div>
      <div className="figures-scroll" tabIndex={0} role="region" aria-label={`${title}, table`} style={{ maxHeight: 300 }}>
        <table className="plain-table">
          <thead><tr><th>Day</th><th className="to-right">Value{unit === '' ? '' : `, ${unit}`}</th><th className="to-right">Expected</th><th>By</th><th>What stands out</th></tr></thead>
          <tbody>{points.toReversed().map((p, i) => <tr key={`${p.at}${i}`}><td className="mono">{showDay(p.at, laboratory.zone)}</td><td className="mono to-right">{p.value.toFixed(digits)}</td><td className="mono to-right">{p.expected === null ? '–' : `${p.expected}${p.tolerance === null ? '' : ` ± ${p.tolerance}`}`}</td><td>{p.by}</td><td className="wraps">{[...(startsBase(p) ? ['first after a service'] : []), ...(p.passed ? [] : ['not in order']), ...p.signals.map((signal) => CONTROL_RULES[signal as ControlRule])].join('; ')}</td></tr>)}</tbody>
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

import { niceRange, niceTicks } from '../../app/figure/nice-ticks.ts';
import { scaleUncertaintyAt, type ScaleFit } from '../../app/calibration/scale-fit.ts';
import { UNIT_WORDS } from '../../app/calibration/standard.ts';

const SIZE = { width: 640, height: 190, left: 52, right: 12, top: 10, bottom: 30 } as const;
const BAND_STEPS = 60;
/** Twice the standard uncertainty: where 95 of 100 corrected positions lie. */
const COVERAGE = 2;

const signed = (value: number, decimals: number): string => `${value < 0 ? '−' : value > 0 ? '+' : ''}${Math.abs(value).toFixed(decimals)}`;

/** What the fitted scale leaves at each line, over the band in which corrected positions are trusted. */
export function ResidualPlot({ fit }: { readonly fit: ScaleFit }) {
  const { width, height, left, right, top, bottom } = SIZE;
  const positions = fit.lines.map((line) => line.measured);
  const [low, high] = niceRange(Math.min(...positions), Math.max(...positions), 6);
  const band = Array.from({ length: BAND_STEPS + 1 }, (_, i) => { const at = low + ((high - low) * i) / BAND_STEPS; return { at, u: COVERAGE * scaleUncertaintyAt(fit, at) }; });
  const used = fit.lines.filter((line) => line.used);
  const most = Math.max(...used.map((line) => Math.abs(line.residual) + line.standardError), ...band.filter(({ at }) => at >= fit.range[0] && at <= fit.range[1]).map(({ u }) => u), 1e-6) * 1.15;
  const x = (value: number): number => left + ((value - low) / (high - low)) * (width - left - right);
  const y = (value: number): number => top + (0.5 - 0.5 * Math.max(-1, Math.min(1, value / most))) * (height - top - bottom);
  const across = niceTicks(low, high, 6);
  const up = niceTicks(-most, most, 4);
  const edge = [...band.map(({ at, u }) => `${x(at)},${y(u)}`), ...band.toReversed().map(({ at, u }) => `${x(at)},${y(-u)}`)].join(' ');
  return (
    <svg className="residuals" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`Residuals of ${used.length} lines; root mean square ${fit.residualRms.toFixed(3)} ${UNIT_WORDS[fit.unit]}`}>
      <polygon points={edge} className="residuals-band" />
      {up.values.map((v) => (
        <g key={v}><line x1={left} x2={width - right} y1={y(v)} y2={y(v)} className={v === 0 ? 'residuals-zero' : 'residuals-grid'} />
          <text x={left - 6} y={y(v) + 4} textAnchor="end">{signed(v, up.decimals)}</text></g>
      ))}
      {across.values.map((v) => <text key={v} x={x(v)} y={height - 12} textAnchor="middle">{v.toFixed(across.decimals)}</text>)}
      <text x={width - right} y={height - 1} textAnchor="end">{UNIT_WORDS[fit.unit]}</text>
      {fit.lines.map((line) => (
        <g key={line.measured} className={line.used ? 'residuals-used' : 'residuals-left-out'}>
          <line x1={x(line.measured)} x2={x(line.measured)} y1={y(line.residual - line.standardError)} y2={y(line.residual + line.standardError)} />
          <circle cx={x(line.measured)} cy={y(line.residual)} r={3}><title>{`${line.reference} ${UNIT_WORDS[fit.unit]}: ${signed(line.residual, 3)}${line.used ? '' : ', left out'}`}</title></circle>
        </g>
      ))}
    </svg>
  );
}

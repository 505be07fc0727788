import type { PairResult, PairStone } from '../../app/images/pair-result.ts';

const [WIDTH, HEIGHT, SIDE, FOOT] = [344, 92, 14, 30] as const;
/** Ticks at powers of two are labelled as fractions where below one. */
const tickWord = (power: number): string => (power < 0 ? `1/${2 ** -power}` : String(2 ** power));
/** Dots are spread over a few rows so that they do not hide one another; the row means nothing. */
const ROWS = 5;

/** Short-wave over long-wave of every stone on a scale of doublings; those that stand out as rings with their number. */
export function RatioPlot({ result, selected, onSelect }: { readonly result: PairResult; readonly selected: string | null; readonly onSelect: (markId: string) => void }) {
  const shown = result.stones.filter((stone): stone is PairStone & { logRatio: number } => stone.logRatio !== null);
  if (shown.length === 0) return null;
  const powers = shown.map((stone) => stone.logRatio / Math.LN2);
  const [from, to] = [Math.floor(Math.min(...powers) - 0.3), Math.ceil(Math.max(...powers) + 0.3)];
  const step = Math.max(1, Math.ceil((to - from) / 7));
  const ticks = Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
  const at = (power: number): number => SIDE + ((WIDTH - 2 * SIDE) * (power - from)) / (to - from);
  return (
    <svg className="ratio-plot" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`Short-wave over long-wave of ${shown.length} stones, from ${tickWord(from)} to ${tickWord(to)}; the same numbers stand in the table.`}>
      {ticks.map((power) => <g key={power}><line x1={at(power)} x2={at(power)} y1={4} y2={HEIGHT - FOOT} /><text x={at(power)} y={HEIGHT - FOOT + 14} textAnchor="middle">{tickWord(power)}</text></g>)}
      {result.medianLogRatio === null ? null : <line className="ratio-median" x1={at(result.medianLogRatio / Math.LN2)} x2={at(result.medianLogRatio / Math.LN2)} y1={4} y2={HEIGHT - FOOT} />}
      {shown.map((stone, i) => {
        const [x, y] = [at(stone.logRatio / Math.LN2), 12 + ((i * 3) % ROWS) * ((HEIGHT - FOOT - 20) / (ROWS - 1))];
        return (
          <g key={stone.markId} className={`${stone.standsOut ? 'ratio-out' : 'ratio-dot'} ${stone.markId === selected ? 'ratio-selected' : ''}`} onClick={() => { onSelect(stone.markId); }}>
            <circle cx={x} cy={y} r={stone.standsOut ? 4.2 : 2.8} />
            {stone.standsOut || stone.markId === selected ? <text x={x + 8} y={y + 4}>{stone.number}</text> : null}
          </g>
        );
      })}
      <text x={WIDTH - SIDE} y={HEIGHT - 3} textAnchor="end">short-wave ÷ long-wave, relative</text>
    </svg>
  );
}

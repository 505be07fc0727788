import type { PairResult, PairStone } from '../../app/images/pair-result.ts';
import { timesMedian } from '../../app/images/pair-findings.ts';

const percent = ({ brightness, state }: PairStone['longWave']): string => (state === 'dark' ? 'dark' : `${state === 'clipped' ? '> ' : ''}${(100 * brightness).toPrecision(2)}`);
const BOUND_WORDS = { none: '', 'at-least': '≥ ', 'at-most': '≤ ' } as const;

/** A bar from the median outwards: right towards short-wave, left towards long-wave; the most unusual stone fills it. */
function RatioBar({ times, most }: { readonly times: number; readonly most: number }) {
  const share = Math.log2(times) / most;
  return <svg className="ratio-bar" viewBox="-20 0 40 8" aria-hidden="true"><line x1={0} x2={0} y1={0} y2={8} /><rect x={Math.min(0, 20 * share)} y={2} width={Math.max(0.6, 20 * Math.abs(share))} height={4} /></svg>;
}

/** Every stone with its brightness under both lamps in hundredths of full scale, its ratio against the piece, its colour; the unusual ones first. */
export function PairTable({ result, labelOf, selected, onSelect }: { readonly result: PairResult; readonly labelOf: (stoneId: string | null) => string | null; readonly selected: string | null; readonly onSelect: (markId: string) => void }) {
  const unusual = (stone: PairStone): number => Math.abs(stone.score ?? -1);
  const stones = [...result.stones].sort((a, b) => Number(b.standsOut) - Number(a.standsOut) || unusual(b) - unusual(a) || a.number - b.number);
  // At least a doubling fills the bar: a piece that is all alike shows short bars.
  const most = Math.max(1, ...stones.map((stone) => Math.abs(Math.log2(timesMedian(stone, result) ?? 1))));
  return (
    <table className="pair-table">
      <caption className="hide">Stones under both lamps, the unusual ones first</caption>
      <thead><tr><th scope="col">Stone</th><th scope="col" className="right">long</th><th scope="col" className="right">short</th><th scope="col" className="right">÷ median</th><th scope="col"><span className="hide">Bar</span></th><th scope="col">glow</th></tr></thead>
      <tbody>
        {stones.map((stone) => {
          const times = timesMedian(stone, result);
          return (
            <tr key={stone.markId} className={stone.markId === selected ? 'pair-row-selected' : ''} onClick={() => { onSelect(stone.markId); }}>
              <th scope="row"><button type="button" aria-pressed={stone.markId === selected}><span className="mono">{stone.number}</span>{labelOf(stone.stoneId) ? <span className="quiet"> {labelOf(stone.stoneId)}</span> : null}</button></th>
              <td className="mono right">{percent(stone.longWave)}</td>
              <td className="mono right">{percent(stone.shortWave)}</td>
              <td className="mono right">{times === null ? '–' : `${BOUND_WORDS[stone.bound]}${times.toPrecision(2)}`}</td>
              <td>{times === null ? null : <RatioBar times={times} most={most} />}</td>
              <td>{stone.shortWave.colour?.word ?? stone.longWave.colour?.word ?? '–'}{stone.standsOut ? <strong className="pair-out"> <span aria-hidden="true">○</span> stands out, <span className="mono">{stone.score!.toFixed(1)}</span></strong> : null}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

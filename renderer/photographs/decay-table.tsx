import type { ItemView } from '../../app/contract/cases.ts';
import { lifetimeText } from '../../app/images/decay-findings.ts';
import type { DecayResult, DecayStone } from '../../app/images/decay-result.ts';
import { placeAddress } from '../router.ts';

const [WIDTH, HEIGHT] = [180, 44] as const;
/** Decades of brightness that the small curve shows. */
const DECADES = 3;

/** Brightness over time, upwards by decades: a single lifetime is a straight line. */
function Curve({ stone, until }: { readonly stone: DecayStone; readonly until: number }) {
  const lit = stone.points.filter((point) => point.state !== 'dark' && point.brightness > 0);
  if (lit.length === 0) return <span className="quiet">no glow</span>;
  const top = Math.max(...lit.map((point) => point.brightness));
  const at = (seconds: number, brightness: number): readonly [number, number] => [4 + ((WIDTH - 8) * seconds) / until, 4 + (HEIGHT - 8) * Math.min(1, Math.log10(top / brightness) / DECADES)];
  const fitted = (seconds: number): number => stone.fit!.terms.reduce((sum, { amplitude, lifetime }) => sum + amplitude * Math.exp(-seconds / lifetime), 0);
  const line = stone.fit === null ? '' : Array.from({ length: 41 }, (_, i) => (i * until) / 40).filter((seconds) => seconds >= lit[0]!.seconds && fitted(seconds) > top / 10 ** DECADES).map((seconds) => at(seconds, Math.min(top, fitted(seconds))).map((v) => v.toFixed(1)).join(',')).join(' ');
  return (
    <svg className="decay-curve" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <line x1={4} x2={WIDTH - 4} y1={HEIGHT - 4} y2={HEIGHT - 4} />
      {line ? <polyline points={line} /> : null}
      {lit.map((point) => { const [x, y] = at(point.seconds, point.brightness); return <circle key={point.seconds} cx={x} cy={y} r={2.2} className={point.state === 'clipped' ? 'decay-clipped' : ''} />; })}
    </svg>
  );
}

/** Every stone with its fading, its lifetime and its colour. */
export function DecayTable({ item, result }: { readonly item: ItemView; readonly result: DecayResult }) {
  const until = Math.max(1, ...result.stones.flatMap((stone) => stone.points.map((point) => point.seconds)));
  const labelOf = (stoneId: string | null) => item.stones.find((stone) => stone.id === stoneId)?.label;
  return (
    <table className="pair-table measured-table">
      <caption className="hide">After-glow of every stone</caption>
      <thead><tr><th scope="col">Stone</th><th scope="col">fading over {until} s, three decades</th><th scope="col">lifetime</th><th scope="col" className="right">seen until</th><th scope="col">glow</th></tr></thead>
      <tbody>
        {result.stones.map((stone) => (
          <tr key={stone.markId}>
            <th scope="row"><span className="mono">{stone.number}</span> {labelOf(stone.stoneId) ? <a href={placeAddress({ view: 'stone', id: stone.stoneId! })}>{labelOf(stone.stoneId)}</a> : null}</th>
            <td><Curve stone={stone} until={until} /></td>
            <td className="mono">{stone.fit === null ? '–' : stone.fit.terms.map(lifetimeText).join(', ')}</td>
            <td className="mono right">{stone.seenUntil === null ? '–' : `${stone.seenUntil} s`}</td>
            <td>{stone.colour?.word ?? '–'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

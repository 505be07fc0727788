import type { ItemView, StoneSummary } from '../../app/contract/cases.ts';
import type { MapView } from '../../app/contract/pieces.ts';
import { useAsk } from '../queries.ts';
import { placeAddress } from '../router.ts';
import { useGridPicture } from './use-grid-picture.ts';
import { usePicture } from './use-picture.ts';
import './piece.css';

/** Longer side of the small picture, in points. */
const SMALL_SIDE = 480;
const WIDTH = 180;

function OneMap({ map, item, stone }: { readonly map: MapView; readonly item: ItemView; readonly stone: StoneSummary }) {
  const { ground } = map;
  const photograph = ground.kind === 'photograph' ? item.photographs.find((one) => one.id === ground.photographId) ?? null : null;
  const shown = usePicture(photograph, SMALL_SIDE);
  const grid = useGridPicture(ground);
  const picture = grid ?? shown.picture;
  if (!picture) return null;
  const height = WIDTH * picture.height / picture.width;
  const mark = map.marks.find((one) => one.stoneId === stone.id)!;
  return (
    <a className="small-map" href={placeAddress({ view: 'piece', id: item.id, panel: map.id })} title={`Open the map “${map.name}”`}>
      <svg viewBox={`0 0 ${WIDTH} ${height}`} role="img" aria-label={`${map.name}: where ${stone.label} sits`}>
        <image href={picture.url} width={WIDTH} height={height} preserveAspectRatio="none" />
        {map.marks.filter((one) => one !== mark).map((one) => <circle key={one.id} cx={one.x * WIDTH} cy={one.y * height} r={1.6} className="small-other" />)}
        <Pointer x={mark.x * WIDTH} y={mark.y * height} r={Math.max(8, mark.radius * WIDTH + 3)} />
      </svg>
      <span className="quiet">{map.name}, mark <span className="mono">{mark.number}</span></span>
    </a>
  );
}

/** Four strokes that point at a place and leave it free. */
function Pointer({ x, y, r }: { readonly x: number; readonly y: number; readonly r: number }) {
  const d = `M${x - r} ${y}H${x - r / 2}M${x + r / 2} ${y}H${x + r}M${x} ${y - r}V${y - r / 2}M${x} ${y + r / 2}V${y + r}`;
  return <><path d={d} className="leader-under" /><path d={d} className="leader-over" /></>;
}

/** Where a stone sits in its piece: each map that has a mark for it, small. Nothing where there is none. */
export function SmallMap({ item, stone }: { readonly item: ItemView; readonly stone: StoneSummary }) {
  const piece = useAsk('pieces.get', item.kind === 'loose' ? null : { itemId: item.id }, { keep: true });
  const maps = piece.data?.maps.filter((map) => map.marks.some((mark) => mark.stoneId === stone.id)) ?? [];
  if (maps.length === 0) return null;
  return <section className="small-maps" aria-label="Where it sits"><p className="label">Where it sits</p>{maps.map((map) => <OneMap key={map.id} map={map} item={item} stone={stone} />)}</section>;
}

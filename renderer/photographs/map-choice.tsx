import type { PieceView } from '../../app/contract/pieces.ts';
import { Choice } from '../look/choice.tsx';

const NO_MAP = 'none';

/** Maps of a piece whose marks can be measured. */
export const measurableMaps = (piece: PieceView) => piece.maps.filter((map) => map.ground.kind === 'photograph' && map.marks.length > 0);

/** Whose places are measured: a map's marks, or those that the program finds. */
export function MapChoice({ piece, value, onChange, unmarked = 'bright places found by the program' }: {
  readonly piece: PieceView; readonly value: string | null; readonly onChange: (mapId: string | null) => void;
  /** What is measured without a map. */
  readonly unmarked?: string;
}) {
  const single = piece.item.stones.length === 1;
  return (
    <Choice label="Stones" value={value ?? NO_MAP} onChange={(next) => { onChange(next === NO_MAP ? null : next); }}
      hint={value !== null ? 'The marks that are tied to a stone can be given findings.' : single ? 'The largest place that is found is taken for the stone.' : 'What the program finds belongs to no stone: nothing can be proposed from it.'}
      options={[...measurableMaps(piece).map((map) => ({ value: map.id, label: `marks of the map “${map.name}”` })), { value: NO_MAP, label: unmarked }]} />
  );
}

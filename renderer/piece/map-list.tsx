import type { ItemView, StoneSummary } from '../../app/contract/cases.ts';
import type { MapView } from '../../app/contract/pieces.ts';
import { renumberMarks, tieInOrder, type MarkOrder } from '../../app/piece/order-marks.ts';
import { gapSentences, mapGaps } from '../../app/piece/map-gaps.ts';
import type { Mark } from '../../app/piece/mark.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { Glyph } from '../look/glyph.tsx';
import { showMoment } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { shownConclusion } from '../stones/shown-conclusion.ts';
import { stoneSays } from './stone-glyph.ts';

function History({ map }: { readonly map: MapView }) {
  const { laboratory } = useHouse();
  const history = useAsk('pieces.history', { mapId: map.id }, { keep: true });
  return (
    <details className="map-history"><summary>Version {map.version}, {map.by}, {showMoment(map.at, laboratory.zone)}</summary>
      <ol>{history.data?.map((one) => <li key={one.version}><span className="mono">{one.version}</span> <span>{one.what}<br /><span className="quiet">{one.by}, {showMoment(one.at, laboratory.zone)}</span></span></li>)}</ol>
    </details>
  );
}

/** All marks of the map with what their stones say, what is still open, and how they are numbered and tied. */
export function MapList({ item, map, marks, others, aspect, onChange, onSelect }: {
  readonly item: ItemView; readonly map: MapView; readonly marks: readonly Mark[]; /** Marks of the piece's other maps. */ readonly others: readonly (readonly Mark[])[]; readonly aspect: number;
  readonly onChange: (alter: (marks: readonly Mark[]) => Mark[]) => void; readonly onSelect: (id: string) => void;
}) {
  const stones = new Map<string, StoneSummary>(item.stones.map((stone) => [stone.id, stone]));
  const open = gapSentences(mapGaps([marks, ...others], item.stones));
  const canTie = marks.some((mark) => mark.stoneId === null) && item.stones.some((stone) => !marks.some((mark) => mark.stoneId === stone.id));
  const number = (order: MarkOrder) => { onChange((now) => renumberMarks(now, order, aspect)); };
  return (
    <section className="map-list" aria-label="Marks of this map">
      {open.length > 0 ? <ul className="map-gaps">{open.map((sentence) => <li key={sentence}>{sentence}</li>)}</ul> : <p className="second">Every stone of the piece has its mark.</p>}
      {marks.length > 0 ? (
        <>
          <ul className="map-rows">{marks.toSorted((a, b) => a.number - b.number).map((mark) => {
            const stone = mark.stoneId === null ? undefined : stones.get(mark.stoneId);
            return (
              <li key={mark.id}><button type="button" onClick={() => { onSelect(mark.id); }}>
                <span className="mono">{mark.number}</span>{stone ? <Glyph of={shownConclusion(stone)} /> : <span className="map-no-glyph" />}
                <span className="one-line" title={stone ? stoneSays(stone) : undefined}>{stone ? <><span>{stone.label}</span> <span className="quiet">{stone.position || stoneSays(stone)}</span></> : <span className="warn">no stone</span>}</span>
              </button></li>
            );
          })}</ul>
          <div className="map-order"><span className="label">Number anew</span><Button kind="quiet" onPress={() => { number('clockwise'); }}>clockwise</Button><Button kind="quiet" onPress={() => { number('rows'); }}>in rows</Button></div>
          {canTie ? <div><Button kind="quiet" onPress={() => { onChange((now) => tieInOrder(now, item.stones.map((stone) => stone.id))); }}>Tie open marks to open stones in order</Button></div> : null}
        </>
      ) : null}
      <History map={map} />
    </section>
  );
}

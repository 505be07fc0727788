import type { MapView } from '../../contract/pieces.ts';
import { gapSentences, mapGaps } from '../../piece/map-gaps.ts';
import type { PictureView } from '../../piece/picture-view.ts';
import { capitalise } from '../count-words.ts';
import type { PieceMapPart } from '../sections/piece-map.ts';
import { reportedConclusion } from './stone-opinion.ts';
import type { ReportSource } from './report-source.ts';

/** A map of an item with an upright copy of its picture. */
export type SourceMap = { readonly map: MapView; readonly view: PictureView; readonly picture: { readonly base64: string; readonly width: number; readonly height: number } | null };

function captionOf({ map, view, picture }: SourceMap, source: ReportSource): string {
  const { ground } = map;
  if (ground.kind === 'grid') return 'A plain grid, not to scale.';
  const photograph = source.case.parcels.flatMap((parcel) => parcel.items).flatMap((item) => item.photographs).find((one) => one.id === ground.photographId);
  const words = [photograph?.caption || photograph?.name || 'Picture', photograph ? `SHA-256 begins ${photograph.sha256.slice(0, 16)}` : ''];
  const changed = [view.rotation === 0 ? '' : 'turned', view.crop === null ? '' : 'cropped'].filter(Boolean).join(' and ');
  return `${words.filter(Boolean).join(', ')}${changed ? `; shown ${changed}, the record as taken` : ''}${picture === null ? '; the picture can’t be drawn here' : ''}.`;
}

/** What the report says of one map: its picture, its marks with the opinions on their stones, and what is open. */
export function mapText(source: ReportSource, entry: SourceMap): PieceMapPart['maps'][number] {
  const { map, view, picture } = entry;
  const item = source.case.parcels.flatMap((parcel) => parcel.items).find((one) => one.id === map.itemId);
  const stones = new Map(source.stones.map((one) => [one.stone.id, one]));
  const ofItem = (source.maps ?? []).filter((one) => one.map.itemId === map.itemId);
  const gaps = mapGaps(ofItem.map((one) => one.map.marks), item?.stones ?? []);
  const untied = map.marks.filter((mark) => mark.stoneId === null).map((mark) => mark.number).toSorted((a, b) => a - b);
  return {
    heading: `Item ${item?.label ?? ''}, ${map.name}`, ground: map.ground, view, picture, caption: captionOf(entry, source),
    marks: map.marks.toSorted((a, b) => a.number - b.number).map(({ number, x, y, radius, stoneId }) => {
      const stone = stoneId === null ? undefined : stones.get(stoneId);
      const conclusion = stone ? reportedConclusion(source, stone) : null;
      return { number, x, y, radius, stone: stone?.stone.label ?? '', position: stone?.stone.position ?? '', conclusion: conclusion === null ? null : { id: conclusion.id, words: conclusion.words } };
    }),
    open: gapSentences({ unmarked: ofItem.at(-1)?.map.id === map.id ? gaps.unmarked : [], untied }).map(capitalise),
  };
}

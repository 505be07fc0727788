import type { MapHistory, MapView, PhotographLook } from '../../app/contract/pieces.ts';
import { mapChanges, type MapState } from '../../app/piece/map-changes.ts';
import { mapGround, mark } from '../../app/piece/mark.ts';
import { pictureView } from '../../app/piece/picture-view.ts';
import type { ReadDb, WriteTx } from '../handle.ts';

type MapRow = {
  id: string; item_id: string; ordinal: number; version: number; name: string; ground: string; marks: string; removed: number; at: string; by: string;
};

/** Each version of each map, with what belongs to the map. */
const VERSIONS = `SELECT m.id, m.item_id, m.ordinal, v.version, v.name, v.ground, v.marks, v.removed, v.at, p.name AS by
  FROM piece_map m JOIN piece_map_version v ON v.map_id = m.id JOIN person p ON p.id = v.person_id`;
const NEWEST = '(SELECT max(n.version) FROM piece_map_version n WHERE n.map_id = m.id)';

const stateOf = (row: MapRow): MapState => ({ name: row.name, ground: mapGround.parse(JSON.parse(row.ground)), marks: mark.array().parse(JSON.parse(row.marks)) });

const viewOf = (row: MapRow): MapView => ({
  id: row.id, itemId: row.item_id, ordinal: row.ordinal, ...stateOf(row), marks: mark.array().parse(JSON.parse(row.marks)), version: row.version, at: row.at, by: row.by,
});

/** A map as it stands, with whether it was taken out of the piece; null where there is none. */
export function mapById(db: ReadDb | WriteTx, mapId: string): { readonly map: MapView; readonly removed: boolean } | null {
  const row = db.get<MapRow>(`${VERSIONS} WHERE m.id = ? AND v.version = ${NEWEST}`, [mapId]);
  return row ? { map: viewOf(row), removed: row.removed === 1 } : null;
}

/** The maps of an item as they stand, in the order they were made; those taken out are left out. */
export function mapsOfItem(db: ReadDb | WriteTx, itemId: string): MapView[] {
  return db.all<MapRow>(`${VERSIONS} WHERE m.item_id = ? AND v.version = ${NEWEST} AND v.removed = 0 ORDER BY m.ordinal`, [itemId]).map(viewOf);
}

/** Every version of a map with what it changed, newest first. */
export function historyOfMap(db: ReadDb, mapId: string): MapHistory[] {
  const rows = db.all<MapRow>(`${VERSIONS} WHERE m.id = ? ORDER BY v.version`, [mapId]);
  return rows.map((row, index) => {
    const before = rows[index - 1];
    const what = row.removed === 1 ? 'taken out of the piece' : `${before?.removed === 1 ? 'brought back; ' : ''}${mapChanges(before ? stateOf(before) : null, stateOf(row))}`;
    return { version: row.version, at: row.at, by: row.by, what, marks: stateOf(row).marks.length };
  }).reverse();
}

type LookRow = { photograph_id: string; version: number; view: string; at: string; by: string };

const LOOKS = `SELECT l.photograph_id, l.version, l.view, l.at, p.name AS by FROM picture_view l JOIN person p ON p.id = l.person_id
  WHERE l.version = (SELECT max(n.version) FROM picture_view n WHERE n.photograph_id = l.photograph_id)`;

const lookOf = (row: LookRow): PhotographLook => ({ photographId: row.photograph_id, version: row.version, view: pictureView.parse(JSON.parse(row.view)), at: row.at, by: row.by });

/** How a photograph was last looked at, or null. */
export function lookAtPhotograph(db: ReadDb | WriteTx, photographId: string): PhotographLook | null {
  const row = db.get<LookRow>(`${LOOKS} AND l.photograph_id = ?`, [photographId]);
  return row ? lookOf(row) : null;
}

/** The same of all photographs of an item. */
export function looksOfItem(db: ReadDb | WriteTx, itemId: string): PhotographLook[] {
  return db.all<LookRow>(`${LOOKS} AND l.photograph_id IN (SELECT id FROM photograph WHERE item_id = ?)`, [itemId]).map(lookOf);
}

import type { Failure } from '../../app/contract/failure.ts';
import type { MapHistory, MapView, PhotographLook, PieceView, SaveMapInput } from '../../app/contract/pieces.ts';
import { mapChanges } from '../../app/piece/map-changes.ts';
import type { PictureView } from '../../app/piece/picture-view.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { pictureView, pieceMap, pieceMapVersion } from '../schema/index.ts';
import { caseView } from './case-view.ts';
import { historyOfMap, lookAtPhotograph, looksOfItem, mapById, mapsOfItem } from './pieces-read.ts';
import { notFound, refused } from './refusals.ts';

type PersonChange = Change & { readonly personId: string };

export type PiecesStore = {
  get(itemId: string): Promise<PieceView | null>;
  saveMap(change: PersonChange, input: SaveMapInput): Promise<Result<MapView, Failure>>;
  removeMap(change: PersonChange, mapId: string, onVersion: number): Promise<Result<{ version: number }, Failure>>;
  history(mapId: string): Promise<MapHistory[]>;
  look(photographId: string): Promise<PhotographLook | null>;
  saveLook(change: PersonChange, photographId: string, view: PictureView): Promise<Result<PhotographLook, Failure>>;
};

const overtaken = (map: MapView): { readonly ok: false; readonly error: Failure } => err({
  code: 'conflict', message: `${map.by} changed this map meanwhile.`, next: 'Your marks still stand here. Look at the map as it is now, then place again what is missing.',
});

/** Why these marks can't stand on this item: a stone of another piece, twice the same number, a picture of another case. */
function unfitting(tx: WriteTx, caseId: string, { itemId, ground, marks }: SaveMapInput): Result<null, Failure> {
  const own = new Set(tx.all<{ id: string }>('SELECT id FROM stone WHERE item_id = ?', [itemId]).map((row) => row.id));
  if (marks.some((mark) => mark.stoneId !== null && !own.has(mark.stoneId))) return refused('A mark is tied to a stone of another piece.', 'Tie it to a stone of this piece, or to none.');
  const twice = <T>(values: readonly T[]): boolean => new Set(values).size < values.length;
  if (twice(marks.map((mark) => mark.number)) || twice(marks.map((mark) => mark.id))) return refused('Two marks carry the same number.', 'Give each mark its own number.');
  if (twice(marks.flatMap((mark) => mark.stoneId ?? []))) return refused('Two marks are tied to the same stone.', 'Untie one of them; a second map may show the stone again.');
  const known = ground.kind === 'grid' || tx.get('SELECT 1 FROM photograph WHERE id = ? AND case_id = ?', [ground.photographId, caseId]) !== undefined;
  return known ? ok(null) : notFound('That photograph');
}

function writeVersion(tx: WriteTx, newId: () => string, change: PersonChange, caseId: string, map: Pick<MapView, 'id' | 'version' | 'name' | 'ground' | 'marks'>, removed: boolean): void {
  const { id, version, name, ground, marks } = map;
  tx.orm.insert(pieceMapVersion).values({
    id: newId(), caseId, mapId: id, version, name, photographId: ground.kind === 'photograph' ? ground.photographId : null,
    ground: JSON.stringify(ground), marks: JSON.stringify(marks), removed, at: change.at, personId: change.personId,
  }).run();
}

function makeMap(tx: WriteTx, newId: () => string, caseId: string, itemId: string): string {
  const id = newId();
  const { n } = tx.get<{ n: number }>('SELECT coalesce(max(ordinal), 0) + 1 AS n FROM piece_map WHERE item_id = ?', [itemId])!;
  tx.orm.insert(pieceMap).values({ id, caseId, itemId, ordinal: n }).run();
  return id;
}

function saveMap(tx: WriteTx, newId: () => string, change: PersonChange, input: SaveMapInput): Result<MapView, Failure> {
  const piece = tx.get<{ case_id: string }>('SELECT case_id FROM item WHERE id = ?', [input.itemId]);
  if (!piece) return notFound('That piece');
  const before = input.mapId === null ? null : mapById(tx, input.mapId);
  if (input.mapId !== null && before?.map.itemId !== input.itemId) return notFound('That map');
  if (before && before.map.version !== input.onVersion) return overtaken(before.map);
  const fits = unfitting(tx, piece.case_id, input);
  if (!fits.ok) return fits;
  const { name, ground, marks } = input;
  const id = input.mapId ?? makeMap(tx, newId, piece.case_id, input.itemId);
  const version = (before?.map.version ?? 0) + 1;
  writeVersion(tx, newId, change, piece.case_id, { id, version, name, ground, marks }, false);
  appendAudit(tx, change, {
    subject: id, caseId: piece.case_id,
    content: { map: { item: input.itemId, name, version, ground, marks: marks.length, what: mapChanges(before?.map ?? null, { name, ground, marks }) } },
  });
  return ok(mapById(tx, id)!.map);
}

function removeMap(tx: WriteTx, newId: () => string, change: PersonChange, mapId: string, onVersion: number): Result<{ version: number }, Failure> {
  const before = mapById(tx, mapId);
  if (before === null || before.removed) return notFound('That map');
  if (before.map.version !== onVersion) return overtaken(before.map);
  const { case_id: caseId } = tx.get<{ case_id: string }>('SELECT case_id FROM piece_map WHERE id = ?', [mapId])!;
  const version = onVersion + 1;
  writeVersion(tx, newId, change, caseId, { ...before.map, version }, true);
  appendAudit(tx, change, { subject: mapId, caseId, content: { map: { item: before.map.itemId, name: before.map.name, version, removed: true } } });
  return ok({ version });
}

function saveLook(tx: WriteTx, newId: () => string, change: PersonChange, photographId: string, view: PictureView): Result<PhotographLook, Failure> {
  const shown = tx.get<{ case_id: string }>('SELECT case_id FROM photograph WHERE id = ?', [photographId]);
  if (!shown) return notFound('That photograph');
  const version = (lookAtPhotograph(tx, photographId)?.version ?? 0) + 1;
  tx.orm.insert(pictureView).values({ id: newId(), caseId: shown.case_id, photographId, version, view: JSON.stringify(view), at: change.at, personId: change.personId }).run();
  appendAudit(tx, change, { subject: photographId, caseId: shown.case_id, content: { view: { version, ...view } } });
  return ok(lookAtPhotograph(tx, photographId)!);
}

function pieceOf(handle: StoreHandle, itemId: string): PieceView | null {
  const row = handle.read.get<{ case_id: string }>('SELECT case_id FROM item WHERE id = ?', [itemId]);
  const view = row ? caseView(handle.read, row.case_id) : null;
  const item = view?.parcels.flatMap((parcel) => parcel.items).find((one) => one.id === itemId);
  if (!view || !item) return null;
  return { caseId: view.id, caseNumber: view.number, clientName: view.client.name, item, maps: mapsOfItem(handle.read, itemId), looks: looksOfItem(handle.read, itemId) };
}

/** Maps of pieces and views of photographs: every change is a further row, with its entry in the audit ledger. */
export function createPiecesStore(handle: StoreHandle, newId: () => string): PiecesStore {
  return {
    async get(itemId) { return pieceOf(handle, itemId); },
    saveMap: (change, input) => handle.transactResult<MapView, Failure>((tx) => saveMap(tx, newId, change, input)),
    removeMap: (change, mapId, onVersion) => handle.transactResult<{ version: number }, Failure>((tx) => removeMap(tx, newId, change, mapId, onVersion)),
    async history(mapId) { return historyOfMap(handle.read, mapId); },
    async look(photographId) { return lookAtPhotograph(handle.read, photographId); },
    saveLook: (change, photographId, view) => handle.transactResult<PhotographLook, Failure>((tx) => saveLook(tx, newId, change, photographId, view)),
  };
}

import { z } from 'zod';
import { mapGround, mark, MARK_LIMITS } from '../piece/mark.ts';
import { pictureView } from '../piece/picture-view.ts';
import { itemView } from './cases.ts';
import { filled, id, instant } from './common.ts';
import { changes, reads } from './operation.ts';

const marks = z.array(mark).max(MARK_LIMITS.most, `A map holds at most ${MARK_LIMITS.most} marks: divide the piece into several maps.`);

/** A map of a piece as it stands. */
export const mapView = z.object({
  id, itemId: id, ordinal: z.number(), name: z.string(), ground: mapGround, marks: z.array(mark),
  /** Counts its changes from 1. */
  version: z.number(), at: instant, by: z.string(),
});
export type MapView = z.infer<typeof mapView>;

/** How a photograph was last looked at. */
export const photographLook = z.object({ photographId: id, version: z.number(), view: pictureView, at: instant, by: z.string() });
export type PhotographLook = z.infer<typeof photographLook>;

export const pieceView = z.object({
  caseId: id, caseNumber: z.string(), clientName: z.string(), item: itemView, maps: z.array(mapView), looks: z.array(photographLook),
});
export type PieceView = z.infer<typeof pieceView>;

export const mapHistory = z.object({ version: z.number(), at: instant, by: z.string(), what: z.string(), marks: z.number() });
export type MapHistory = z.infer<typeof mapHistory>;

export const saveMapInput = z.strictObject({
  /** Null makes a new map. */
  mapId: id.nullable(), itemId: id,
  /** The version the changes were made on; 0 for a new map. Another person's newer one is not written over. */
  onVersion: z.number().int().min(0),
  name: filled('Give the map a name, for instance “front”.', 60), ground: mapGround, marks,
});
export type SaveMapInput = z.infer<typeof saveMapInput>;

const HANDS = ['intake', 'examiner', 'second-examiner', 'manager'] as const;

export const piecesContract = {
  /** An item with its maps, its photographs and how each is looked at. */
  'pieces.get': reads('anyone', z.strictObject({ itemId: id }), pieceView),
  'pieces.saveMap': changes(HANDS, saveMapInput, mapView),
  /** Takes a map out of the piece; its versions stay in the casebook. Saving it again brings it back. */
  'pieces.removeMap': changes(HANDS, z.strictObject({ mapId: id, onVersion: z.number().int().min(1) }), z.object({ version: z.number() })),
  /** Newest first. */
  'pieces.history': reads('anyone', z.strictObject({ mapId: id }), z.array(mapHistory)),
  /** How the photograph is looked at; null as long as it is looked at as taken. */
  'photographs.look': reads('anyone', z.strictObject({ photographId: id }), photographLook.nullable()),
  'photographs.saveLook': changes(HANDS, z.strictObject({ photographId: id, view: pictureView }), photographLook),
};

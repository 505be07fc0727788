import type { piecesContract } from '../../app/contract/pieces.ts';
import { ok } from '../../app/result.ts';
import { notFound } from './failures.ts';
import type { Services } from './service.ts';
import { stonesAsSeen } from './withhold-first.ts';
import { changing, reading, type WorkDeps } from './work-context.ts';

/** Maps of pieces, and how their photographs are looked at. */
export function createPieceServices(deps: WorkDeps): Pick<Services, keyof typeof piecesContract> {
  return {
    'pieces.get': reading(deps, 'pieces.get', async ({ itemId }, { stores, casebook, call }) => {
      const piece = await stores.pieces.get(itemId);
      return piece === null ? notFound('This piece') : ok({ ...piece, item: { ...piece.item, stones: stonesAsSeen(piece.item.stones, { casebook, call }) } });
    }),
    'pieces.saveMap': changing(deps, 'pieces.saveMap', (input, { stores, change }) => stores.pieces.saveMap(change, input)),
    'pieces.removeMap': changing(deps, 'pieces.removeMap', ({ mapId, onVersion }, { stores, change }) => stores.pieces.removeMap(change, mapId, onVersion)),
    'pieces.history': reading(deps, 'pieces.history', async ({ mapId }, { stores }) => ok(await stores.pieces.history(mapId))),
    'photographs.look': reading(deps, 'photographs.look', async ({ photographId }, { stores }) => ok(await stores.pieces.look(photographId))),
    'photographs.saveLook': changing(deps, 'photographs.saveLook', ({ photographId, view }, { stores, change }) => stores.pieces.saveLook(change, photographId, view)),
  };
}

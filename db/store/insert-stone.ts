import { stoneLabel } from '../../app/custody/item-label.ts';
import type { ColourClass } from '../../app/domain/colour-class.ts';
import type { WriteTx } from '../handle.ts';
import { stone } from '../schema/index.ts';

export type StoneFacts = {
  readonly position: string; readonly shape: string; readonly measurements: string; readonly colourClass: ColourClass;
  /** 0.0001 ct, null where it can't be weighed. */
  readonly weight: number | null;
};

/** Writes the next stone of an item inside the caller's transaction; returns its id and label. */
export function insertStone(
  tx: WriteTx, id: string, item: { readonly caseId: string; readonly itemId: string; readonly itemLabel: string }, facts: StoneFacts & { readonly mounted: boolean },
): { id: string; label: string } {
  const last = tx.get<{ last: number | null }>('SELECT max(ordinal) AS last FROM stone WHERE item_id = ?', [item.itemId])?.last ?? 0;
  const label = stoneLabel(item.itemLabel, last + 1);
  const { position, shape, measurements, weight, mounted } = facts;
  tx.orm.insert(stone).values({
    id, caseId: item.caseId, itemId: item.itemId, ordinal: last + 1, label, mounted, position, shape, measurements, weight, colourClass: facts.colourClass,
  }).run();
  return { id, label };
}

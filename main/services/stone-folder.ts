import { mayBeWithheld, stonesOf, withholdCase, withholdItem, withholdStone } from '../../app/conclusions/withhold.ts';
import { ok } from '../../app/result.ts';
import { caseView } from '../../db/store/case-view.ts';
import { readingOf, withheldAmong } from '../../db/store/second-readings.ts';
import { notFound } from './failures.ts';
import type { Services } from './service.ts';
import { reading, type WorkDeps } from './work-context.ts';

export function createStoneFolderService(deps: WorkDeps): Services['stones.folder'] {
  return reading(deps, 'stones.folder', async ({ stoneId }, { casebook, stores, at, call }) => {
    const place = await stores.runs.place(stoneId);
    const evidence = await stores.evidence(stoneId, at);
    const ofCase = place === null ? null : caseView(casebook.handle.read, place.caseId);
    const item = ofCase?.parcels.flatMap((parcel) => parcel.items).find((candidate) => candidate.id === place?.itemId);
    const stone = item?.stones.find((candidate) => candidate.id === stoneId);
    if (evidence === null || ofCase === null || item === undefined || stone === undefined) return notFound('This stone');
    const viewer = call.session.personId;
    const { read } = casebook.handle;
    const withheld = withheldAmong(read, viewer, mayBeWithheld(stonesOf(ofCase)));
    const conclusions = await stores.conclusions.ofStone(stoneId);
    const newest = conclusions.at(-1);
    const hidden = newest !== undefined && withheld.has(stoneId);
    return ok({
      case: withholdCase(ofCase, withheld), item: withholdItem(item, withheld), stone: withholdStone(stone, withheld), ...evidence, conclusions: hidden ? [] : conclusions,
      withheld: hidden ? { conclusionId: newest.id, by: newest.by, byId: newest.byId, at: newest.at } : null,
      reading: newest === undefined ? null : readingOf(read, viewer, newest.id),
    });
  });
}

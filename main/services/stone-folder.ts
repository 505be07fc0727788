import { ok } from '../../app/result.ts';
import { caseView } from '../../db/store/case-view.ts';
import { notFound } from './failures.ts';
import type { Services } from './service.ts';
import { reading, type WorkDeps } from './work-context.ts';

export function createStoneFolderService(deps: WorkDeps): Services['stones.folder'] {
  return reading(deps, 'stones.folder', async ({ stoneId }, { casebook, stores, at }) => {
    const place = await stores.runs.place(stoneId);
    const evidence = await stores.evidence(stoneId, at);
    const ofCase = place === null ? null : caseView(casebook.handle.read, place.caseId);
    const item = ofCase?.parcels.flatMap((parcel) => parcel.items).find((candidate) => candidate.id === place?.itemId);
    const stone = item?.stones.find((candidate) => candidate.id === stoneId);
    if (evidence === null || ofCase === null || item === undefined || stone === undefined) return notFound('This stone');
    return ok({ case: ofCase, item, stone, ...evidence, conclusions: await stores.conclusions.ofStone(stoneId) });
  });
}

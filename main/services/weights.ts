import type { PieceWeights, WeightEstimateView } from '../../app/contract/lots.ts';
import { ok } from '../../app/result.ts';
import { estimateWeight } from '../../app/weights/estimate-weight.ts';
import { pieceTotal } from '../../app/weights/piece-total.ts';
import { theLaboratory } from '../../db/store/laboratory.ts';
import type { KeptEstimate, KeptWeights } from '../../db/store/weights.ts';
import { notFound } from './failures.ts';
import type { Services } from './service.ts';
import { changing, reading, type WorkDeps } from './work-context.ts';

function viewOf({ at, by, content }: KeptEstimate): WeightEstimateView {
  const { kind: _kind, ...estimate } = content;
  return { at, by, ...estimate };
}

/** Estimates of a piece with their total beside what was declared. */
export function pieceWeightsOf({ stones, declared }: KeptWeights): PieceWeights {
  const estimates = stones.flatMap(({ estimate }) => (estimate === null ? [] : [estimate.content]));
  const weight = declared?.content.weight ?? null;
  return {
    stones: stones.map(({ stoneId, label, estimate }) => ({ stoneId, label, estimate: estimate === null ? null : viewOf(estimate) })),
    declared: declared === null ? null : { at: declared.at, by: declared.by, weight, note: declared.content.note },
    total: pieceTotal(estimates, stones.length - estimates.length, weight),
  };
}

export function createWeightServices(deps: WorkDeps): Pick<Services, 'weights.ofItem' | 'weights.estimate' | 'weights.declare'> {
  return {
    'weights.ofItem': reading(deps, 'weights.ofItem', async ({ itemId }, { stores }) => {
      const kept = await stores.weights.ofItem(itemId);
      return kept === null ? notFound('That item') : ok(pieceWeightsOf(kept));
    }),
    'weights.estimate': changing(deps, 'weights.estimate', async ({ stoneId, measures }, { stores, change, casebook }) => {
      const { readingMm } = theLaboratory(casebook.handle.read).settings;
      const kept = await stores.weights.estimate(change, stoneId, { kind: 'estimate', measures, readingMm, ...estimateWeight(measures, readingMm) });
      return kept.ok ? ok(viewOf(kept.value)) : kept;
    }),
    'weights.declare': changing(deps, 'weights.declare', async ({ itemId, weight, note }, { stores, change }) => {
      const kept = await stores.weights.declare(change, itemId, { kind: 'declared', weight, note });
      return kept.ok ? ok(pieceWeightsOf(kept.value)) : kept;
    }),
  };
}

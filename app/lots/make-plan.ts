import { err, ok, type Result } from '../result.ts';
import { acceptancePlan } from './acceptance-plan.ts';
import { detectionSize, stonesOfPercent } from './detection-size.ts';
import type { PlanContent, PlanInput } from './lot-record.ts';

export type PlanError = { readonly field: string; readonly message: string };

type Sizes = Pick<PlanContent, 'size' | 'acceptance'>;

function sizesOf(lot: number, { aim, confidence }: PlanInput): Sizes {
  switch (aim.is) {
    case 'detect': return { size: detectionSize(lot, stonesOfPercent(lot, aim.percent), confidence / 100), acceptance: null };
    case 'acceptance': {
      const { letter, planLetter, sample, accept, refuse } = acceptancePlan(lot, aim.level, aim.aql);
      return { size: sample, acceptance: { letter, planLetter, accept, refuse } };
    }
    case 'all': return { size: lot, acceptance: null };
    case 'own': return { size: aim.size, acceptance: null };
  }
}

/** The plan that follows from what is wanted for a lot of `lot` stones, or the field that does not fit. */
export function makePlan(lot: number, wanted: PlanInput): Result<PlanContent, PlanError> {
  if (wanted.aim.is === 'own' && wanted.aim.size > lot) return err({ field: 'aim.size', message: `The lot holds ${lot} stones; no more can be tested.` });
  const sizes = sizesOf(lot, wanted);
  const wholeLot = sizes.size >= lot;
  if (wanted.drawn === 'list' && wanted.seed === null && !wholeLot) return err({ field: 'seed', message: 'A drawn list needs a starting number, so that another can draw the same list.' });
  return ok({ kind: 'plan', ...wanted, seed: wanted.drawn === 'list' && !wholeLot ? wanted.seed : null, lot, ...sizes });
}

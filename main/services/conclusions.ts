import { checkConclusion } from '../../app/conclusions/check-conclusion.ts';
import { checkWording } from '../../app/conclusions/check-wording.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { ok } from '../../app/result.ts';
import { evidenceOfStone } from '../../db/store/stone-folder.ts';
import { notFound } from './failures.ts';
import type { Services } from './service.ts';
import { asFailure, changing, readersOf, type WorkDeps } from './work-context.ts';

type ConclusionServices = Pick<Services, 'conclusions.conclude' | 'conclusions.read' | 'conclusions.confirm'>;

export function createConclusionServices(deps: WorkDeps): ConclusionServices {
  return {
    'conclusions.conclude': changing(deps, 'conclusions.conclude', async (input, { stores, casebook, change }) => {
      const worded = checkWording({ reasons: input.reasons, departure: input.departure }, readersOf(casebook));
      if (!worded.ok) return asFailure(worded.error);
      return stores.conclusions.conclude<Failure>(change, input.stoneId, (tx) => {
        const evidence = evidenceOfStone(tx, input.stoneId, change.at);
        if (evidence === null) return notFound('This stone');
        const { proposal, findings } = evidence;
        const { stoneId, conclusion, reasons } = input;
        const departure = conclusion === proposal.conclusion ? '' : input.departure.trim();
        const allowed = checkConclusion({ conclusion, departure, proposed: proposal.conclusion, findings });
        return allowed.ok ? ok({ stoneId, conclusion, reasons, departure, proposal }) : asFailure(allowed.error);
      });
    }),

    'conclusions.read': changing(deps, 'conclusions.read', async ({ conclusionId, outcome }, { stores, change }) => {
      const read = await stores.conclusions.read(change, conclusionId, outcome);
      if (!read.ok) return asFailure(read.error);
      return read.value === null ? notFound('This conclusion') : ok(read.value);
    }),

    'conclusions.confirm': changing(deps, 'conclusions.confirm', async (input, { stores, casebook, change }) => {
      const worded = checkWording({ reason: input.reason }, readersOf(casebook));
      if (!worded.ok) return asFailure(worded.error);
      const answered = await stores.conclusions.confirm(change, { ...input, reason: input.reason.trim() });
      if (!answered.ok) return asFailure(answered.error);
      return answered.value === null ? notFound('This conclusion') : ok(answered.value);
    }),
  };
}

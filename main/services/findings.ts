import { checkWording } from '../../app/conclusions/check-wording.ts';
import { ok } from '../../app/result.ts';
import { conflict, notFound } from './failures.ts';
import type { Services } from './service.ts';
import { asFailure, changing, readersOf, type WorkDeps } from './work-context.ts';

type FindingServices = Pick<Services, 'findings.decide' | 'findings.add'>;

export function createFindingServices(deps: WorkDeps): FindingServices {
  return {
    'findings.decide': changing(deps, 'findings.decide', async (input, { stores, casebook, change }) => {
      const reason = input.reason.trim();
      const found = await stores.findings.get(input.findingId);
      if (found === null) return notFound('This finding');
      if (found.state === 'replaced') return conflict('A newer analysis took the place of this finding.', 'Decide the finding of the newer analysis.');
      if (!input.accept && reason === '') {
        return asFailure({ code: 'invalid-input', field: 'reason', message: 'Write why it is set aside.', next: 'Give the reason; it is kept and printed.' });
      }
      const worded = checkWording({ reason }, readersOf(casebook));
      if (!worded.ok) return asFailure(worded.error);
      const decided = await stores.findings.decide(change, { findingId: input.findingId, accept: input.accept, reason });
      return decided === null ? notFound('This finding') : ok(decided);
    }),

    'findings.add': changing(deps, 'findings.add', async (input, { stores, casebook, change }) => {
      const { stoneId, method, statement, strength, supports } = input;
      const caution = input.caution.trim();
      const worded = checkWording({ statement, caution }, readersOf(casebook));
      if (!worded.ok) return asFailure(worded.error);
      const added = await stores.findings.add(change, stoneId, { code: `examiner:${method}`, method, statement, strength, supports, ...(caution === '' ? {} : { caution }) });
      return added === null ? notFound('This stone') : ok(added);
    }),
  };
}

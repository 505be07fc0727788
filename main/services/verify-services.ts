import { err, ok } from '../../app/result.ts';
import { reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createVerifyServices(deps: IntakeDeps): Pick<Services, 'ledgers.verify'> {
  return {
    'ledgers.verify': reading(deps, async (casebook, _input, call) => {
      const outcome = await deps.verify(casebook, {
        at: deps.now().toISOString(), outside: deps.manager.outside(), signal: call.signal,
        progress: (done, total) => call.emit({ kind: 'progress', task: 'ledgers.verify', done, total, note: 'recomputing digests' }),
      });
      return outcome === null ? err({ code: 'cancelled', message: 'Verification was stopped before it was finished.', next: 'Start it again when there is time.' }) : ok(outcome);
    }),
  };
}

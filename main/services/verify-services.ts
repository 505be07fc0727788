import { err, ok } from '../../app/result.ts';
import { createCancelTasks } from './cancel-tasks.ts';
import { reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createVerifyServices(deps: IntakeDeps): Pick<Services, 'ledgers.verify'> {
  const tasks = deps.tasks ?? createCancelTasks();
  return {
    'ledgers.verify': reading(deps, async (casebook, { task = 'ledgers.verify' }, call) => {
      const { signal, done: finished } = tasks.begin(task, call.signal);
      let note = 'recomputing digests';
      try {
        const outcome = await deps.verify(casebook, {
          at: deps.now().toISOString(), outside: deps.manager.outside(), signal,
          progress: (done, total) => call.emit({ kind: 'progress', task, done, total, note }),
          alone: () => { note = 'once more without the processes that helped, which ended early'; },
        });
        return outcome === null ? err({ code: 'cancelled', message: 'Verification was stopped before it was finished.', next: 'Start it again when there is time.' }) : ok(outcome);
      } finally {
        finished();
      }
    }),
  };
}

import type { historyContract } from '../../app/contract/history.ts';
import { ok } from '../../app/result.ts';
import { changing, reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

/** What the manager looks back on: the stones, the figures, the trials. */
export function createHistoryServices(deps: IntakeDeps): Pick<Services, keyof typeof historyContract> {
  return {
    'history.stones': reading(deps, async (casebook, filter, call) => ok(await casebook.history.stones(filter, call.session.personId))),
    'history.choices': reading(deps, async (casebook) => ok(await casebook.history.choices(deps.now().toISOString()))),
    'history.rebuildSearch': changing(deps, 'history.rebuildSearch', async (casebook) => {
      await casebook.find.rebuild();
      return ok({ done: true });
    }),
  };
}

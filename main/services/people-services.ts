import { ok } from '../../app/result.ts';
import { noCasebook } from './failures.ts';
import { changing, reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createPeopleServices(deps: IntakeDeps): Pick<Services, 'people.list' | 'people.save' | 'people.actAs'> {
  return {
    'people.list': reading(deps, async (casebook) => ok(await casebook.people.list())),
    'people.save': changing(deps, 'people.save', (casebook, change, input) => casebook.people.save(change, input)),
    'people.actAs': async ({ personId }, call) => {
      const casebook = deps.manager.current();
      if (casebook === null) return noCasebook();
      const who = await casebook.people.actAs({ at: deps.now().toISOString(), personId, operation: 'people.actAs' }, personId);
      if (who.ok) call.session.personId = who.value.id;
      return who;
    },
  };
}

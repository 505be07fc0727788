import { ok } from '../../app/result.ts';
import { changing, reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createClientsServices(deps: IntakeDeps): Pick<Services, 'clients.search' | 'clients.save'> {
  return {
    'clients.search': reading(deps, async (casebook, { text }) => ok(await casebook.clients.search(text))),
    'clients.save': changing(deps, 'clients.save', (casebook, change, input) => casebook.clients.save(change, input)),
  };
}

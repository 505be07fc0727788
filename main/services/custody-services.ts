import { ok } from '../../app/result.ts';
import { changing, reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createCustodyServices(deps: IntakeDeps): Pick<Services, 'custody.list' | 'custody.append' | 'custody.appendMany' | 'custody.whereabouts'> {
  return {
    'custody.list': reading(deps, async (casebook, filter) => ok(await casebook.custody.list(filter))),
    'custody.append': changing(deps, 'custody.append', (casebook, change, input) => casebook.custody.append(change, input)),
    'custody.appendMany': changing(deps, 'custody.appendMany', (casebook, change, input) => casebook.custody.appendMany(change, input)),
    'custody.whereabouts': reading(deps, async (casebook) => ok(await casebook.custody.whereabouts(deps.now().toISOString()))),
  };
}

import { ok } from '../../app/result.ts';
import { reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createBenchServices(deps: IntakeDeps): Pick<Services, 'bench.today'> {
  return {
    'bench.today': reading(deps, async (casebook, _input, call) => ok(await casebook.bench.today(deps.now().toISOString(), call.session.personId))),
  };
}

import { contract } from '../../app/contract/index.ts';
import { ok } from '../../app/result.ts';
import { personById } from '../../db/store/people.ts';
import { withheldAmong } from '../../db/store/second-readings.ts';
import { reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createBenchServices(deps: IntakeDeps): Pick<Services, 'bench.today'> {
  return {
    'bench.today': reading(deps, async (casebook, _input, call) => {
      const today = await casebook.bench.today(deps.now().toISOString(), call.session.personId);
      const { may } = contract['conclusions.confirm'];
      const roles = personById(casebook.handle.read, call.session.personId ?? '')?.roles ?? [];
      // Nothing waits for somebody who may not confirm.
      const waiting = Array.isArray(may) && roles.some((role) => may.includes(role)) ? today.toConfirm : [];
      const withheld = withheldAmong(casebook.handle.read, call.session.personId, waiting.map(({ stoneId }) => stoneId));
      return ok({ ...today, toConfirm: waiting.map((one) => (withheld.has(one.stoneId) ? { ...one, conclusion: null } : one)) });
    }),
  };
}

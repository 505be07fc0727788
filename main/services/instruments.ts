import { ok } from '../../app/result.ts';
import { notFound } from './failures.ts';
import type { Services } from './service.ts';
import { asFailure, changing, reading, type WorkDeps } from './work-context.ts';

type InstrumentServices = Pick<Services, 'instruments.list' | 'instruments.save' | 'instruments.recordCheck'>;

export function createInstrumentServices(deps: WorkDeps): InstrumentServices {
  return {
    'instruments.list': reading(deps, 'instruments.list', async (_input, { stores, at }) => ok(await stores.instruments.list(at))),

    'instruments.save': changing(deps, 'instruments.save', async (input, { stores, change }) => {
      if (await stores.instruments.nameTaken(input.name, input.id)) {
        return asFailure({ code: 'invalid-input', field: 'name', message: `There is already an instrument called “${input.name}”.`, next: 'Give it a name of its own, so that a report can tell the two apart.' });
      }
      const saved = await stores.instruments.save(change, input);
      return saved === null ? notFound('This instrument') : ok(saved);
    }),

    'instruments.recordCheck': changing(deps, 'instruments.recordCheck', async (input, { stores, change }) => {
      const checked = await stores.instruments.recordCheck(change, input);
      return checked === null ? notFound('This instrument') : ok(checked);
    }),
  };
}

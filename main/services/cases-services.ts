import { ok } from '../../app/result.ts';
import { notFound } from './failures.ts';
import { changing, reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';
import { caseAsSeen, stonesAsSeen } from './withhold-first.ts';

type Names = 'cases.takeIn' | 'cases.get' | 'cases.list' | 'cases.amend' | 'stones.list' | 'stones.add' | 'stones.amend';

export function createCasesServices(deps: IntakeDeps): Pick<Services, Names> {
  return {
    'cases.takeIn': changing(deps, 'cases.takeIn', (casebook, change, input) => casebook.cases.takeIn(change, input)),
    'cases.get': reading(deps, async (casebook, { caseId }, call) => {
      const view = await casebook.cases.get(caseId);
      return view === null ? notFound('That case') : ok(caseAsSeen(view, { casebook, call }));
    }),
    'cases.list': reading(deps, async (casebook, filter) => ok(await casebook.cases.list(filter))),
    'cases.amend': changing(deps, 'cases.amend', (casebook, change, input) => casebook.cases.amend(change, input)),
    'stones.list': reading(deps, async (casebook, page, call) => {
      const { total, rows } = await casebook.stones.list(page, call.session.personId);
      return ok({ total, rows: stonesAsSeen(rows, { casebook, call }) });
    }),
    'stones.add': changing(deps, 'stones.add', (casebook, change, input) => casebook.stones.add(change, input)),
    'stones.amend': changing(deps, 'stones.amend', async (casebook, change, input, call) => {
      const amended = await casebook.stones.amend(change, input);
      return amended.ok ? ok(stonesAsSeen([amended.value], { casebook, call })[0]!) : amended;
    }),
  };
}

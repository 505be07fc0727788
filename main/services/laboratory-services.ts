import { ok } from '../../app/result.ts';
import { checkLaboratory } from './casebook-services.ts';
import { changing, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createLaboratoryServices(deps: IntakeDeps): Pick<Services, 'laboratory.save'> {
  return {
    'laboratory.save': changing(deps, 'laboratory.save', async (casebook, change, input) =>
      checkLaboratory(input) ?? ok(await casebook.laboratory.save(change, input))),
  };
}

import { ok } from '../../app/result.ts';
import { reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createFindServices(deps: IntakeDeps): Pick<Services, 'find.anything'> {
  return { 'find.anything': reading(deps, async (casebook, { text }) => ok(await casebook.find.anything(text))) };
}

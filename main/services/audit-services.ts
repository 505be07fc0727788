import { ok } from '../../app/result.ts';
import { reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createAuditServices(deps: IntakeDeps): Pick<Services, 'audit.list'> {
  return { 'audit.list': reading(deps, async (casebook, filter) => ok(await casebook.audit.list(filter))) };
}

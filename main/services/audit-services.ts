import { ok } from '../../app/result.ts';
import { reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';
import { auditAsSeen } from './withhold-first.ts';

export function createAuditServices(deps: IntakeDeps): Pick<Services, 'audit.list'> {
  return { 'audit.list': reading(deps, async (casebook, filter, call) => {
    const { total, rows } = await casebook.audit.list(filter);
    return ok({ total, rows: auditAsSeen(rows, { casebook, call }) });
  }) };
}

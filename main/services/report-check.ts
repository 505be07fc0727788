import { createHash } from 'node:crypto';
import { judgeReport } from '../../app/signature/judge-report.ts';
import { ok } from '../../app/result.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import { KNOWN_TO_NOBODY, knownFor } from './known-for-reports.ts';
import type { Services } from './service.ts';

export type ReportCheckDeps = { readonly casebook: () => Casebook | null; readonly pool: TaskPool };

/** Checks a report that somebody brings, with or without a casebook. */
export function createReportCheckService({ casebook, pool }: ReportCheckDeps): Services['reports.check'] {
  return async ({ bytes }, call) => {
    const task = await pool.run('check-report', bytes, { signal: call.signal });
    if (!task.ok) return taskFailure(task.error);
    const open = casebook();
    const known = open === null ? KNOWN_TO_NOBODY : await knownFor(open);
    return ok({ ...judgeReport(task.value, known), sha256: createHash('sha256').update(bytes).digest('hex'), bytes: bytes.byteLength });
  };
}

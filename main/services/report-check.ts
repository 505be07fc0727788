import { MAX_REPORT_BYTES } from '../../app/contract/uploads.ts';
import { judgeReport } from '../../app/signature/judge-report.ts';
import { err, ok } from '../../app/result.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { eitherSignal } from '../uploads/check-upload.ts';
import type { Uploads } from '../uploads/uploads.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import { KNOWN_TO_NOBODY, knownFor } from './known-for-reports.ts';
import type { Services } from './service.ts';

export type ReportCheckDeps = { readonly casebook: () => Casebook | null; readonly pool: TaskPool; readonly uploads: Uploads };

/** Checks a report that somebody brings, with or without a casebook. */
export function createReportCheckService({ casebook, pool, uploads }: ReportCheckDeps): Services['reports.check'] {
  return async ({ upload }, call) => {
    const whole = uploads.whole(call.session, upload);
    if (!whole.ok) return whole;
    if (whole.value.size > MAX_REPORT_BYTES) return err({ code: 'refused', message: 'The file is larger than 512 MB: no report of Culet is.', next: 'Choose the PDF as the laboratory handed it out.' });
    const { signal, done } = eitherSignal(call.signal, whole.value.signal);
    const task = await pool.run('check-report', whole.value.file, { signal });
    done();
    if (!task.ok) return taskFailure(task.error);
    const open = casebook();
    const known = open === null ? KNOWN_TO_NOBODY : await knownFor(open);
    const { check, sha256, bytes } = task.value;
    return ok({ ...judgeReport(check, known), sha256, bytes });
  };
}

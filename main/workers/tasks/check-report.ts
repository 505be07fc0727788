import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { ReportCheck } from '../../../app/signature/report-check.ts';
import { checkReport } from '../../signature/check-report.ts';
import type { Task } from '../task.ts';

/** Judges a file as a report: what its bytes say, and its own digest. The file is read here, so that the main thread never holds it. */
export const checkReportTask: Task<string, { readonly check: ReportCheck; readonly sha256: string; readonly bytes: number }> = {
  run(file) {
    const bytes = new Uint8Array(readFileSync(file));
    return { check: checkReport(bytes), sha256: createHash('sha256').update(bytes).digest('hex'), bytes: bytes.byteLength };
  },
};

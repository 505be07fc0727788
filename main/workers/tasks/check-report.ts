import type { ReportCheck } from '../../../app/signature/report-check.ts';
import { checkReport } from '../../signature/check-report.ts';
import type { Task } from '../task.ts';

/** Judges the bytes of a report. */
export const checkReportTask: Task<Uint8Array, ReportCheck> = { run: (file) => checkReport(file) };

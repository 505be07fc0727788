import type { ReportModel } from '../../../app/report/report-model.ts';
import { renderReport } from '../../print/render-report.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

/** Draws the pages of a report. */
export const renderReportTask: Task<ReportModel, Uint8Array> = {
  run: (model) => renderReport(model),
  transfers: (pdf) => buffersOf([pdf]),
};

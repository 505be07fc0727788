import type { ReportModel } from '../../../app/report/report-model.ts';
import type { Enclosure } from '../../print/report/enclosure.ts';
import { renderReport } from '../../print/render-report.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

/** What the pages say, and what travels inside them; nothing for a draft. */
export type ReportToDraw = { readonly model: ReportModel; readonly enclosure: Enclosure | null };

/** Draws the pages of a report. */
export const renderReportTask: Task<ReportToDraw, Uint8Array> = {
  run: ({ model, enclosure }) => renderReport(model, enclosure),
  transfers: (pdf) => buffersOf([pdf]),
};

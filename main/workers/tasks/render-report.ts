import type { ReportModel } from '../../../app/report/report-model.ts';
import type { Enclosure } from '../../print/report/enclosure.ts';
import type { SignedFile } from '../../../app/signature/report-statement.ts';
import { describeFile } from '../../signature/describe-file.ts';
import { renderReport } from '../../print/render-report.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

/** What the pages say, and what travels inside them; nothing for a draft. */
export type ReportToDraw = { readonly model: ReportModel; readonly enclosure: Enclosure | null };

/** The pages, and what of their file is to be signed; null where it has no room for a signature. */
export type DrawnReport = { readonly pdf: Uint8Array; readonly file: SignedFile | null };

/** Draws the pages of a report. */
export const renderReportTask: Task<ReportToDraw, DrawnReport> = {
  async run({ model, enclosure }) {
    const pdf = await renderReport(model, enclosure);
    return { pdf, file: enclosure?.signed === true ? describeFile(pdf) : null };
  },
  transfers: ({ pdf }) => buffersOf([pdf]),
};

import { z } from 'zod';
import { reportModel, type ReportModel } from '../report-model.ts';
import { reportModel1 } from './report-model-1.ts';
import { upgradeReport1 } from './upgrade-report-1.ts';

const stored = z.discriminatedUnion('schema', [reportModel, reportModel1]);

/** The content of an issued report from its stored text, whatever form it was stored in. Throws where the text is no report's. */
export function readStoredReport(text: string): ReportModel {
  const model = stored.parse(JSON.parse(text));
  return model.schema === 'culet-report-2' ? model : upgradeReport1(model);
}

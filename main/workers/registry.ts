import type { Task } from './task.ts';
import { analyseSpectrumTask } from './tasks/analyse-spectrum.ts';
import { readAndAnalyseTask } from './tasks/read-and-analyse.ts';
import { analyseFileTask } from './tasks/analyse-file.ts';
import { batchRowsTask } from './tasks/batch-rows.ts';
import { calibrateScaleTask } from './tasks/calibrate-scale.ts';
import { comparePairTask } from './tasks/compare-pair.ts';
import { decodePhotographTask } from './tasks/decode-photograph.ts';
import { findLaserTask } from './tasks/find-laser.ts';
import { measureFrameTask } from './tasks/measure-frame.ts';
import { photographFactsTask } from './tasks/photograph-facts.ts';
import { photographPreviewTask } from './tasks/photograph-preview.ts';
import { reportFiguresTask } from './tasks/report-figures.ts';
import { checkBundleTask } from './tasks/check-bundle.ts';
import { checkReportTask } from './tasks/check-report.ts';
import { renderCustodyTask } from './tasks/render-custody.ts';
import { renderHandOverTask } from './tasks/render-hand-over.ts';
import { renderLabelsTask } from './tasks/render-labels.ts';
import { renderReceiptTask } from './tasks/render-receipt.ts';
import { renderReportTask } from './tasks/render-report.ts';
import { readStrainTask } from './tasks/read-strain.ts';
import { suggestOutlinesTask } from './tasks/suggest-outlines.ts';
import { packFileTask } from './tasks/pack-file.ts';

/** Every task that a worker thread can do, by name. To add one: write its file in tasks/ and name it here. */
export const TASKS = {
  'analyse-spectrum': analyseSpectrumTask,
  'read-and-analyse': readAndAnalyseTask,
  'analyse-file': analyseFileTask,
  'batch-rows': batchRowsTask,
  'calibrate-scale': calibrateScaleTask,
  'find-laser': findLaserTask,
  'report-figures': reportFiguresTask,
  'check-bundle': checkBundleTask,
  'check-report': checkReportTask,
  'render-custody': renderCustodyTask,
  'render-hand-over': renderHandOverTask,
  'render-labels': renderLabelsTask,
  'render-receipt': renderReceiptTask,
  'render-report': renderReportTask,
  'compare-pair': comparePairTask,
  'decode-photograph': decodePhotographTask,
  'measure-frame': measureFrameTask,
  'read-strain': readStrainTask,
  'photograph-facts': photographFactsTask,
  'photograph-preview': photographPreviewTask,
  'suggest-outlines': suggestOutlinesTask,
  'pack-file': packFileTask,
} as const;

export type TaskName = keyof typeof TASKS;
export type TaskPayload<N extends TaskName> = (typeof TASKS)[N] extends Task<infer P, infer _R> ? P : never;
export type TaskResult<N extends TaskName> = (typeof TASKS)[N] extends Task<infer _P, infer R> ? R : never;

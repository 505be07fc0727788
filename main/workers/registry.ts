import type { Task } from './task.ts';
import { analyseSpectrumTask } from './tasks/analyse-spectrum.ts';
import { readAndAnalyseTask } from './tasks/read-and-analyse.ts';
import { renderReportTask } from './tasks/render-report.ts';
import { zipFilesTask } from './tasks/zip-files.ts';

/** Every task that a worker thread can do, by name. To add one: write its file in tasks/ and name it here. */
export const TASKS = {
  'analyse-spectrum': analyseSpectrumTask,
  'read-and-analyse': readAndAnalyseTask,
  'render-report': renderReportTask,
  'zip-files': zipFilesTask,
} as const;

export type TaskName = keyof typeof TASKS;
export type TaskPayload<N extends TaskName> = (typeof TASKS)[N] extends Task<infer P, infer _R> ? P : never;
export type TaskResult<N extends TaskName> = (typeof TASKS)[N] extends Task<infer _P, infer R> ? R : never;

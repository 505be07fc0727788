import { index, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { caseRecord, item, stone } from './cases.ts';
import { person } from './house.ts';
import { testRun } from './work.ts';

/** What measuring photographs of an item gave, with everything it was made from. Only grows. */
export const photoAnalysis = sqliteTable('photo_analysis', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  itemId: text('item_id').notNull().references(() => item.id),
  /** pair · decay · polarisers */
  kind: text('kind').notNull(),
  /** Version of the pipeline that made it. */
  version: text('version').notNull(),
  /** JSON of app/images/analysis-parameters.ts: photographs with their digests, marks, exposures. */
  parameters: text('parameters').notNull(),
  /** JSON of the result of its kind. */
  result: text('result').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [index('photo_analysis_item').on(t.itemId)]);

/** The run that a stone was given from an analysis of photographs. */
export const photoAnalysisRun = sqliteTable('photo_analysis_run', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  analysisId: text('analysis_id').notNull().references(() => photoAnalysis.id),
  stoneId: text('stone_id').notNull().references(() => stone.id),
  runId: text('run_id').notNull().references(() => testRun.id),
}, (t) => [index('photo_analysis_run_analysis').on(t.analysisId)]);

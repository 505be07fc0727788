import { blob, index, integer, real, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { caseRecord, rawRecord, stone } from './cases.ts';
import { instrument, person } from './house.ts';

export const testRun = sqliteTable('test_run', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  stoneId: text('stone_id').notNull().references(() => stone.id),
  /** R1, R2 … within the case. */
  number: integer('number').notNull(),
  method: text('method').notNull(),
  instrumentId: text('instrument_id').references(() => instrument.id),
  /** in-order · lapsed · failed · never-checked · no-instrument, as it stood at the time of the run. */
  instrumentState: text('instrument_state').notNull(),
  laserNm: real('laser_nm'),
  temperatureK: real('temperature_k'),
  integrationMs: real('integration_ms'),
  resolution: real('resolution'),
  /** JSON array of hazards whose caution was acknowledged. */
  cautions: text('cautions').notNull(),
  /** JSON of app/domain/observation.ts, or null. */
  observation: text('observation'),
  note: text('note').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [uniqueIndex('run_case_number').on(t.caseId, t.number), index('run_stone').on(t.stoneId)]);

/** One raw record in one run, and what reading it gave. */
export const runFile = sqliteTable('run_file', {
  id: text('id').primaryKey(),
  runId: text('run_id').notNull().references(() => testRun.id),
  rawRecordId: text('raw_record_id').notNull().references(() => rawRecord.id),
  /** read · refused */
  outcome: text('outcome').notNull(),
  format: text('format'),
  reader: text('reader').notNull(),
  /** JSON: ReadWarning[] */
  warnings: text('warnings').notNull(),
  /** JSON: ReadError, where refused */
  error: text('error'),
}, (t) => [index('run_file_run').on(t.runId), index('run_file_raw').on(t.rawRecordId)]);

/** x and y as little-endian Float64, in the file's order. */
export const spectrum = sqliteTable('spectrum', {
  id: text('id').primaryKey(),
  runId: text('run_id').notNull().references(() => testRun.id),
  runFileId: text('run_file_id').notNull().references(() => runFile.id),
  ordinal: integer('ordinal').notNull(),
  title: text('title').notNull(),
  xUnit: text('x_unit').notNull(),
  yUnit: text('y_unit').notNull(),
  /** True where a person stated the unit because the file does not. */
  unitStated: integer('unit_stated', { mode: 'boolean' }).notNull(),
  points: integer('points').notNull(),
  x: blob('x', { mode: 'buffer' }).notNull(),
  y: blob('y', { mode: 'buffer' }).notNull(),
  /** SHA-256 over x then y bytes. */
  sha256: text('sha256').notNull(),
}, (t) => [index('spectrum_run').on(t.runId)]);

export const analysis = sqliteTable('analysis', {
  id: text('id').primaryKey(),
  spectrumId: text('spectrum_id').notNull().references(() => spectrum.id),
  pipeline: text('pipeline').notNull(),
  tables: text('tables').notNull(),
  parameters: text('parameters').notNull(),
  /** JSON of app/spectra/analysis.ts analysisResult. */
  result: text('result').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [index('analysis_spectrum').on(t.spectrumId)]);

export const finding = sqliteTable('finding', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  stoneId: text('stone_id').notNull().references(() => stone.id),
  runId: text('run_id').references(() => testRun.id),
  analysisId: text('analysis_id').references(() => analysis.id),
  /** analysis · observation · examiner */
  origin: text('origin').notNull(),
  code: text('code').notNull(),
  statement: text('statement').notNull(),
  strength: text('strength').notNull(),
  supports: text('supports').notNull(),
  method: text('method').notNull(),
  caution: text('caution').notNull(),
  source: text('source').notNull(),
  /** proposed · accepted · set-aside · replaced */
  state: text('state').notNull(),
  reason: text('reason').notNull(),
  decidedBy: text('decided_by').references(() => person.id),
  decidedAt: text('decided_at'),
  createdAt: text('created_at').notNull(),
}, (t) => [index('finding_stone').on(t.stoneId), index('finding_run').on(t.runId)]);

/** A person's conclusion; a new one stands beside the old, which stays. */
export const conclusion = sqliteTable('conclusion', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  stoneId: text('stone_id').notNull().references(() => stone.id),
  ordinal: integer('ordinal').notNull(),
  conclusion: text('conclusion').notNull(),
  reasons: text('reasons').notNull(),
  /** JSON of app/evidence/proposal.ts, as it stood. */
  proposal: text('proposal').notNull(),
  rules: text('rules').notNull(),
  /** JSON array of the finding ids that counted. */
  findingIds: text('finding_ids').notNull(),
  departure: text('departure').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
  at: text('at').notNull(),
}, (t) => [uniqueIndex('conclusion_stone_ordinal').on(t.stoneId, t.ordinal)]);

/** A second person's own conclusion, stated while the first was withheld from them. It ends the withholding for this person. */
export const secondReading = sqliteTable('second_reading', {
  id: text('id').primaryKey(),
  conclusionId: text('conclusion_id').notNull().references(() => conclusion.id),
  personId: text('person_id').notNull().references(() => person.id),
  /** Null where the person asked to see the first conclusion without stating one: they knew it, or did not want to. */
  outcome: text('outcome'),
  at: text('at').notNull(),
}, (t) => [uniqueIndex('second_reading_conclusion_person').on(t.conclusionId, t.personId)]);

export const confirmation = sqliteTable('confirmation', {
  id: text('id').primaryKey(),
  conclusionId: text('conclusion_id').notNull().references(() => conclusion.id),
  personId: text('person_id').notNull().references(() => person.id),
  agrees: integer('agrees', { mode: 'boolean' }).notNull(),
  reason: text('reason').notNull(),
  at: text('at').notNull(),
  /** The second person's own conclusion; null where they disagreed without stating one, and in rows from before it was asked for. */
  outcome: text('outcome'),
  /** True where it was stated before the first person's conclusion was shown for answering; null in rows from before there was a choice. */
  readFirst: integer('read_first', { mode: 'boolean' }),
}, (t) => [uniqueIndex('confirmation_conclusion').on(t.conclusionId)]);

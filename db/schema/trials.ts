import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { stone } from './cases.ts';
import { person } from './house.ts';

/** A sample whose origin is known from elsewhere, with which the house tries itself. */
export const knownSample = sqliteTable('known_sample', {
  id: text('id').primaryKey(),
  label: text('label').notNull(),
  /** natural · grown-cvd · grown-hpht · grown-undetermined-method · not-diamond */
  truth: text('truth').notNull(),
  /** How it is known: bought from a grower, reported by another laboratory … */
  basis: text('basis').notNull(),
  createdAt: text('created_at').notNull(),
  createdBy: text('created_by').notNull().references(() => person.id),
}, (t) => [uniqueIndex('known_sample_label').on(t.label)]);

/** A sample that is no longer used, and why; its trials stay, and count unless its origin was found to be wrong. */
export const knownSampleWithdrawal = sqliteTable('known_sample_withdrawal', {
  id: text('id').primaryKey(),
  sampleId: text('sample_id').notNull().references(() => knownSample.id),
  reason: text('reason').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
  /** True where it is not what it was said to be: its trials were then measured against a wrong answer. Null in rows from before it was asked. */
  originWrong: integer('origin_wrong', { mode: 'boolean' }),
}, (t) => [uniqueIndex('known_sample_withdrawal_sample').on(t.sampleId)]);

/** One examination of a known sample and what came out. */
export const knownSampleTrial = sqliteTable('known_sample_trial', {
  id: text('id').primaryKey(),
  sampleId: text('sample_id').notNull().references(() => knownSample.id),
  /** The stone of an ordinary case as which it was examined; null where the outcome was entered by hand. */
  stoneId: text('stone_id').references(() => stone.id),
  /** A conclusion id: what the examination said. */
  outcome: text('outcome').notNull(),
  examinerId: text('examiner_id').notNull().references(() => person.id),
  /** When it was concluded, UTC ISO 8601. */
  examinedAt: text('examined_at').notNull(),
  /** True where the examiner did not know that it was a known sample. */
  blind: integer('blind', { mode: 'boolean' }).notNull(),
  remark: text('remark').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
  /** JSON array of the ids of the instruments that were used; null in rows from before it was asked. */
  instrumentIds: text('instrument_ids'),
}, (t) => [index('known_sample_trial_stone').on(t.stoneId), index('known_sample_trial_sample').on(t.sampleId)]);

/** A trial that was entered by mistake: it is listed, and counts nowhere. */
export const knownSampleTrialWithdrawal = sqliteTable('known_sample_trial_withdrawal', {
  id: text('id').primaryKey(),
  trialId: text('trial_id').notNull().references(() => knownSampleTrial.id),
  reason: text('reason').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [uniqueIndex('known_sample_trial_withdrawal_trial').on(t.trialId)]);

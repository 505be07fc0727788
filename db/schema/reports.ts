import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { caseRecord } from './cases.ts';
import { person } from './house.ts';
import { report } from './ledgers.ts';

/** A text of the laboratory's own in one of its versions; the newest of a kind is printed on new reports. */
export const houseText = sqliteTable('house_text', {
  id: text('id').primaryKey(),
  /** One of app/report/texts/text-kinds.ts. */
  kind: text('kind').notNull(),
  /** 1, 2 … within the kind. Version 0 is the text the program comes with. */
  version: integer('version').notNull(),
  text: text('text').notNull(),
  /** Why it was changed. */
  note: text('note').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [uniqueIndex('house_text_kind_version').on(t.kind, t.version)]);

/** A template of reports in one of its versions; the newest counts. */
export const reportTemplate = sqliteTable('report_template', {
  id: text('id').primaryKey(),
  /** The same for all versions of a template. */
  templateId: text('template_id').notNull(),
  version: integer('version').notNull(),
  /** JSON of app/report/templates/template.ts templateContent. */
  content: text('content').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [uniqueIndex('report_template_template_version').on(t.templateId, t.version)]);

/** An issued report that no longer counts. Its pages stay as they are. */
export const reportWithdrawal = sqliteTable('report_withdrawal', {
  id: text('id').primaryKey(),
  reportId: text('report_id').notNull().references(() => report.id),
  reason: text('reason').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [uniqueIndex('report_withdrawal_report').on(t.reportId)]);

/** Which kinds of report a person may issue, from which day. The newest row of a person counts. */
export const signingAuthorisation = sqliteTable('signing_authorisation', {
  id: text('id').primaryKey(),
  /** Who is authorised. */
  holderId: text('holder_id').notNull().references(() => person.id),
  ordinal: integer('ordinal').notNull(),
  /** JSON array of kinds of report; empty ends the authorisation. */
  kinds: text('kinds').notNull(),
  /** Calendar date in the laboratory's zone, yyyy-mm-dd. */
  since: text('since').notNull(),
  note: text('note').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [uniqueIndex('signing_authorisation_holder_ordinal').on(t.holderId, t.ordinal)]);

/** A report in the making. No record: it may change and vanish until it is issued. */
export const reportDraft = sqliteTable('report_draft', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  /** JSON of app/report/draft/draft-content.ts. */
  content: text('content').notNull(),
  createdAt: text('created_at').notNull(),
  createdBy: text('created_by').notNull().references(() => person.id),
  updatedAt: text('updated_at').notNull(),
  updatedBy: text('updated_by').notNull().references(() => person.id),
}, (t) => [index('report_draft_case').on(t.caseId)]);

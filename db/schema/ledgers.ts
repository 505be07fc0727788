import { sql } from 'drizzle-orm';
import { blob, index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { caseRecord, item } from './cases.ts';
import { person } from './house.ts';

/** Who had what, where: append-only and chained. `content` is the canonical JSON that was hashed. */
export const custodyEntry = sqliteTable('custody_entry', {
  seq: integer('seq').primaryKey({ autoIncrement: true }),
  at: text('at').notNull(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  itemId: text('item_id').notNull().references(() => item.id),
  personId: text('person_id').notNull().references(() => person.id),
  content: text('content').notNull(),
  previous: text('previous').notNull(),
  hash: text('hash').notNull(),
}, (t) => [
  index('custody_case').on(t.caseId),
  index('custody_item').on(t.itemId),
  // The bench counts these at every start: small indexes instead of reading the whole ledger.
  index('custody_returned').on(t.itemId).where(sql`json_extract(content, '$.event') = 'returned'`),
  index('custody_outside').on(t.itemId).where(sql`json_extract(content, '$.outside') = 1`),
  index('custody_compared').on(t.itemId).where(sql`json_extract(content, '$.differs') IS NOT NULL`),
  index('custody_differs').on(t.itemId).where(sql`json_extract(content, '$.differs') = 1`),
]);

/** Every change of a record: append-only and chained. */
export const auditEntry = sqliteTable('audit_entry', {
  seq: integer('seq').primaryKey({ autoIncrement: true }),
  at: text('at').notNull(),
  /** Null only for what happens before the first person exists. */
  personId: text('person_id'),
  /** Contract operation, for instance 'findings.decide'. */
  operation: text('operation').notNull(),
  /** Id or number of what was changed. */
  subject: text('subject').notNull(),
  caseId: text('case_id'),
  content: text('content').notNull(),
  previous: text('previous').notNull(),
  hash: text('hash').notNull(),
}, (t) => [index('audit_case').on(t.caseId)]);

/** Issued reports: bytes and content stay as they were printed. */
export const report = sqliteTable('report', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  number: text('number').notNull(),
  revision: integer('revision').notNull(),
  /** JSON of app/report/report-model.ts: everything the pages say. */
  model: text('model').notNull(),
  modelDigest: text('model_digest').notNull(),
  pdf: blob('pdf', { mode: 'buffer' }).notNull(),
  pdfSha256: text('pdf_sha256').notNull(),
  issuedAt: text('issued_at').notNull(),
  issuedBy: text('issued_by').notNull().references(() => person.id),
  /** single-stone · piece · lot · case; null in reports from before there were several kinds: those are on a whole case. */
  subjectKind: text('subject_kind'),
  /** Stone or item that is reported; null for a whole case. */
  subjectId: text('subject_id'),
  /** The report that this revision replaces, and why. */
  replaces: text('replaces'),
  reason: text('reason'),
}, (t) => [uniqueIndex('report_number_revision').on(t.number, t.revision), index('report_case').on(t.caseId)]);

import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { caseRecord, item, stone } from './cases.ts';
import { person } from './house.ts';

/** One entry of a lot's own book: a count, a plan, results, a split. It only grows; the newest of a kind holds. */
export const lotRecord = sqliteTable('lot_record', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  itemId: text('item_id').notNull().references(() => item.id),
  ordinal: integer('ordinal').notNull(),
  /** count · plan · results · split */
  kind: text('kind').notNull(),
  /** JSON of app/lots/lot-record.ts lotContent. */
  content: text('content').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [uniqueIndex('lot_record_item_ordinal').on(t.itemId, t.ordinal)]);

/** An estimate of a stone's weight from its measures, or the total that was declared for a piece. The newest of each holds. */
export const weightRecord = sqliteTable('weight_record', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  itemId: text('item_id').notNull().references(() => item.id),
  /** Null: what was declared for the whole piece. */
  stoneId: text('stone_id').references(() => stone.id),
  /** JSON of app/weights/weight-record.ts weightContent. */
  content: text('content').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [index('weight_record_item').on(t.itemId)]);

import { blob, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { person } from './house.ts';

/** A bundle of another laboratory, as it came. Its cases are none of the house's: nothing else in this casebook leads to them. */
export const sealedBundle = sqliteTable('sealed_bundle', {
  /** SHA-256 of the zip: the same bundle is taken in once. */
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  /** Whose it says it is. */
  laboratory: text('laboratory').notNull(),
  /** authentic · unknown-key · unsigned, as it was judged when it was taken in. */
  verdict: text('verdict').notNull(),
  /** SHA-256 of the public key that signed; empty where nobody did. */
  fingerprint: text('fingerprint').notNull(),
  /** How it was made sure whose it is, where its key was not known. */
  checkedHow: text('checked_how').notNull(),
  /** What the check gave, as JSON (app/bundle/bundle-verdict.ts). */
  summary: text('summary').notNull(),
  size: integer('size').notNull(),
  zip: blob('zip', { mode: 'buffer' }).notNull(),
  takenAt: text('taken_at').notNull(),
  takenBy: text('taken_by').notNull().references(() => person.id),
});

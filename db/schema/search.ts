import { integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';

/** What each row of the search index stands for. Both are derived: they can be made anew from the records at any time. */
export const searchEntry = sqliteTable('search_entry', {
  row: integer('row').primaryKey(),
  /** client · case · stone · report */
  kind: text('kind').notNull(),
  id: text('id').notNull(),
}, (t) => [uniqueIndex('search_entry_kind_id').on(t.kind, t.id)]);

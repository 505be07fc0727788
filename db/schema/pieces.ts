import { integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { caseRecord, item, photograph } from './cases.ts';
import { person } from './house.ts';

/** A map of a piece: front, back, a detail. What it shows stands in its versions. */
export const pieceMap = sqliteTable('piece_map', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  itemId: text('item_id').notNull().references(() => item.id),
  /** 1, 2 … within the item. */
  ordinal: integer('ordinal').notNull(),
}, (t) => [uniqueIndex('piece_map_item_ordinal').on(t.itemId, t.ordinal)]);

/** One state of a map. Only grows: the newest version counts, the others are its history. */
export const pieceMapVersion = sqliteTable('piece_map_version', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  mapId: text('map_id').notNull().references(() => pieceMap.id),
  /** 1, 2 … within the map. */
  version: integer('version').notNull(),
  name: text('name').notNull(),
  /** The picture the marks are placed on; null where it is a grid. */
  photographId: text('photograph_id').references(() => photograph.id),
  /** JSON of app/piece/mark.ts mapGround. */
  ground: text('ground').notNull(),
  /** JSON array of app/piece/mark.ts mark. */
  marks: text('marks').notNull(),
  /** True where this version took the map out of the piece. */
  removed: integer('removed', { mode: 'boolean' }).notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [uniqueIndex('piece_map_version_map_version').on(t.mapId, t.version)]);

/** How a photograph is looked at: turned, cropped, with a scale. Only grows; the newest counts. The photograph itself never changes. */
export const pictureView = sqliteTable('picture_view', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  photographId: text('photograph_id').notNull().references(() => photograph.id),
  /** 1, 2 … within the photograph. */
  version: integer('version').notNull(),
  /** JSON of app/piece/picture-view.ts pictureView. */
  view: text('view').notNull(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
}, (t) => [uniqueIndex('picture_view_photograph_version').on(t.photographId, t.version)]);

import { blob, index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { person } from './house.ts';

export const client = sqliteTable('client', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  address: text('address').notNull(),
  email: text('email').notNull(),
  phone: text('phone').notNull(),
  note: text('note').notNull(),
  createdAt: text('created_at').notNull(),
}, (t) => [index('client_name').on(t.name)]);

export const caseRecord = sqliteTable('case_record', {
  id: text('id').primaryKey(),
  number: text('number').notNull(),
  clientId: text('client_id').notNull().references(() => client.id),
  receivedAt: text('received_at').notNull(),
  /** Calendar date in the laboratory's zone, yyyy-mm-dd. */
  dueOn: text('due_on'),
  asks: text('asks').notNull(),
  remarks: text('remarks').notNull(),
  /** open · reported · returned */
  state: text('state').notNull(),
  createdBy: text('created_by').notNull().references(() => person.id),
  createdAt: text('created_at').notNull(),
}, (t) => [uniqueIndex('case_number').on(t.number), index('case_state_due').on(t.state, t.dueOn), index('case_client').on(t.clientId), index('case_received').on(t.receivedAt)]);

export const parcel = sqliteTable('parcel', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  ordinal: integer('ordinal').notNull(),
  sealNumber: text('seal_number').notNull(),
  remarks: text('remarks').notNull(),
}, (t) => [uniqueIndex('parcel_case_ordinal').on(t.caseId, t.ordinal)]);

export const item = sqliteTable('item', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  parcelId: text('parcel_id').notNull().references(() => parcel.id),
  /** A, B, C … within the case. */
  label: text('label').notNull(),
  /** loose · jewellery · lot */
  kind: text('kind').notNull(),
  declared: text('declared').notNull(),
  declaredValue: text('declared_value').notNull(),
  /** Gross weight in steps of weightUnit: ct = 0.0001 ct, g = 0.00001 g. */
  grossWeight: integer('gross_weight'),
  weightUnit: text('weight_unit').notNull(),
  /** Stones in a lot, as counted. */
  count: integer('count'),
  /** open-back · closed-back · null for loose */
  setting: text('setting'),
  condition: text('condition').notNull(),
}, (t) => [uniqueIndex('item_case_label').on(t.caseId, t.label), index('item_parcel').on(t.parcelId)]);

export const stone = sqliteTable('stone', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  itemId: text('item_id').notNull().references(() => item.id),
  ordinal: integer('ordinal').notNull(),
  /** */
  label: text('label').notNull(),
  mounted: integer('mounted', { mode: 'boolean' }).notNull(),
  /** Where it sits in the piece, in words. */
  position: text('position').notNull(),
  shape: text('shape').notNull(),
  /** 0.0001 ct; null where it can't be weighed. */
  weight: integer('weight'),
  measurements: text('measurements').notNull(),
  colourClass: text('colour_class').notNull(),
}, (t) => [uniqueIndex('stone_item_ordinal').on(t.itemId, t.ordinal), index('stone_case').on(t.caseId)]);

/** Bytes as they came, compressed without loss; never changed. */
export const rawRecord = sqliteTable('raw_record', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  sha256: text('sha256').notNull(),
  name: text('name').notNull(),
  mediaType: text('media_type').notNull(),
  size: integer('size').notNull(),
  /** 'deflate' or 'stored' */
  packing: text('packing').notNull(),
  content: blob('content', { mode: 'buffer' }).notNull(),
  addedAt: text('added_at').notNull(),
  addedBy: text('added_by').notNull().references(() => person.id),
}, (t) => [index('raw_case_sha').on(t.caseId, t.sha256)]);

export const photograph = sqliteTable('photograph', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull().references(() => caseRecord.id),
  itemId: text('item_id').references(() => item.id),
  stoneId: text('stone_id').references(() => stone.id),
  rawRecordId: text('raw_record_id').notNull().references(() => rawRecord.id),
  caption: text('caption').notNull(),
  /** white · long-wave · short-wave · polarised */
  light: text('light').notNull(),
  at: text('at').notNull(),
}, (t) => [index('photograph_case').on(t.caseId), index('photograph_item').on(t.itemId)]);

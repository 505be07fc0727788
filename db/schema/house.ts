import { integer, primaryKey, real, sqliteTable, text, blob } from 'drizzle-orm/sqlite-core';

/** The laboratory itself: one row, id 1. */
export const laboratory = sqliteTable('laboratory', {
  id: integer('id').primaryKey(),
  name: text('name').notNull(),
  address: text('address').notNull(),
  zone: text('zone').notNull(),
  logo: blob('logo', { mode: 'buffer' }),
  logoType: text('logo_type'),
  isDemonstration: integer('is_demonstration', { mode: 'boolean' }).notNull(),
  /** JSON of app/domain/house-settings.ts. */
  settings: text('settings').notNull(),
  createdAt: text('created_at').notNull(),
});

export const person = sqliteTable('person', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  initials: text('initials').notNull(),
  /** JSON array of roles. */
  roles: text('roles').notNull(),
  active: integer('active', { mode: 'boolean' }).notNull(),
  createdAt: text('created_at').notNull(),
});

export const instrument = sqliteTable('instrument', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  /** JSON array of method ids. */
  methods: text('methods').notNull(),
  serial: text('serial').notNull(),
  place: text('place').notNull(),
  /** JSON: what the instrument remembers for its next run (laser, temperature, units of its files …). */
  remembers: text('remembers').notNull(),
  checkEveryDays: integer('check_every_days').notNull(),
  active: integer('active', { mode: 'boolean' }).notNull(),
  createdAt: text('created_at').notNull(),
});

export const instrumentCheck = sqliteTable('instrument_check', {
  id: text('id').primaryKey(),
  instrumentId: text('instrument_id').notNull().references(() => instrument.id),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
  passed: integer('passed', { mode: 'boolean' }).notNull(),
  /** What it was checked with, and what came out, in words. */
  reference: text('reference').notNull(),
  outcome: text('outcome').notNull(),
  /** What was measured, where the check gave a number: "main line of mercury"; all null where it gave none. */
  quantity: text('quantity'),
  unit: text('unit'),
  value: real('value'),
  /** What it should be, and how far from that still passes; null where nobody said. */
  expected: real('expected'),
  tolerance: real('tolerance'),
  /** True where it is the first after a service or a repair: limits of its course begin anew. Null in rows from before it was asked. */
  afterService: integer('after_service', { mode: 'boolean' }),
});

/** Last number given out for a kind ('case', 'report') in a year: numbers are gapless. */
export const numberCounter = sqliteTable('number_counter', {
  kind: text('kind').notNull(),
  year: integer('year').notNull(),
  last: integer('last').notNull(),
}, (t) => [primaryKey({ columns: [t.kind, t.year] })]);

/** Half-filled forms, so that nothing typed is lost when the window closes. */
export const draft = sqliteTable('draft', {
  key: text('key').primaryKey(),
  content: text('content').notNull(),
  updatedAt: text('updated_at').notNull(),
});

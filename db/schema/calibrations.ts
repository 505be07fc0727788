import { index, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { instrument, instrumentCheck, person } from './house.ts';

/** A calibration of an instrument's scale; the newest one governs later runs, the others say what governed earlier ones. */
export const calibration = sqliteTable('calibration', {
  id: text('id').primaryKey(),
  instrumentId: text('instrument_id').notNull().references(() => instrument.id),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
  /** The check that it counts as. */
  checkId: text('check_id').notNull().references(() => instrumentCheck.id),
  /** Name of the lamp or standard, in words. */
  standard: text('standard').notNull(),
  unit: text('unit').notNull(),
  /** correct: later positions are corrected by it · note: they are left, and known to be off by so much */
  use: text('use').notNull(),
  /** Standard uncertainty of later positions, in the unit. */
  error: real('error').notNull(),
  fileName: text('file_name').notNull(),
  fileSha256: text('file_sha256').notNull(),
  /** JSON of app/calibration/scale-fit.ts scaleFit. */
  fit: text('fit').notNull(),
}, (t) => [index('calibration_instrument').on(t.instrumentId, t.at)]);

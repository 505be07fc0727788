import { blob, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
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
  /** The zip, in casebooks from before bundles were kept in pieces; empty where it stands in `sealed_bundle_piece`. */
  zip: blob('zip', { mode: 'buffer' }).notNull(),
  takenAt: text('taken_at').notNull(),
  takenBy: text('taken_by').notNull().references(() => person.id),
});

/**
 * A piece of the zip of a bundle, in their order: a large one is never held in memory. Written before the bundle itself; pieces of a bundle that
 * did not come about are taken out at the next opening. The bundle's id vouches for them: it is the SHA-256 of all of them.
 */
export const sealedBundlePiece = sqliteTable('sealed_bundle_piece', {
  /** “BUNDLE/SEQ”. */
  id: text('id').primaryKey(),
  bundleId: text('bundle_id').notNull(),
  /** 0, 1, 2 … */
  seq: integer('seq').notNull(),
  bytes: blob('bytes', { mode: 'buffer' }).notNull(),
}, (t) => [uniqueIndex('sealed_bundle_piece_bundle_seq').on(t.bundleId, t.seq)]);

/** What is read out of a kept bundle, so that it can be found and compared. Derived: made anew where it is missing, and proves nothing. */
export const sealedFacts = sqliteTable('sealed_facts', {
  bundleId: text('bundle_id').primaryKey().references(() => sealedBundle.id),
  /** JSON of app/bundle/bundle-facts.ts. */
  facts: text('facts').notNull(),
  /** JSON array of `{other, sentence}`: what it says differently from bundles of the same laboratory that were described before it. */
  contradictions: text('contradictions').notNull(),
});

/** A case of a kept bundle, as it is found. Texts of one part stand behind one another, with U+001F between them. Derived, as `sealed_facts`. */
export const sealedCase = sqliteTable('sealed_case', {
  /** “BUNDLE/FOLDER”. */
  id: text('id').primaryKey(),
  bundleId: text('bundle_id').notNull().references(() => sealedBundle.id),
  /** As the index of the bundle names it. */
  folder: text('folder').notNull(),
  number: text('number').notNull(),
  client: text('client').notNull(),
  question: text('question').notNull(),
  remark: text('remark').notNull(),
  parcel: text('parcel').notNull(),
  item: text('item').notNull(),
  stone: text('stone').notNull(),
  conclusion: text('conclusion').notNull(),
  reason: text('reason').notNull(),
  answer: text('answer').notNull(),
  finding: text('finding').notNull(),
  note: text('note').notNull(),
  report: text('report').notNull(),
  file: text('file').notNull(),
}, (t) => [uniqueIndex('sealed_case_bundle_folder').on(t.bundleId, t.folder)]);

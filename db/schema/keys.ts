import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { person } from './house.ts';

/** Public part of the laboratory's own keys. The newest signs; the older stay, since what they signed stays. */
export const signingKey = sqliteTable('signing_key', {
  /** First 16 digits of the SHA-256 of the public key. */
  id: text('id').primaryKey(),
  /** Raw Ed25519 public key, 64 hexadecimal digits. */
  publicKey: text('public_key').notNull(),
  createdAt: text('created_at').notNull(),
  /** Null only for a key made before the first person exists. */
  createdBy: text('created_by').references(() => person.id),
  /** Why a key was made anew; empty for the first. */
  reason: text('reason').notNull(),
});

/** Private part of a key, sealed to one credential. Emptied, never removed, when that may no longer open it. */
export const keyWrap = sqliteTable('key_wrap', {
  /** "key/credential", or "key/open" for the demonstration's, which is no secret. */
  id: text('id').primaryKey(),
  keyId: text('key_id').notNull().references(() => signingKey.id),
  /** X25519 public key it was sealed to, and the sender's that was used once; 64 hexadecimal digits each. */
  sealedTo: text('sealed_to').notNull(),
  sender: text('sender').notNull(),
  /** AES-256-GCM: ciphertext and tag, 48 bytes, hexadecimal; with `store` what the key store made of them. Empty once taken away. */
  sealed: text('sealed').notNull(),
  madeAt: text('made_at').notNull(),
  /** The operating system's key store that closed it a second time (app/domain/key-closing.ts); null where the credential alone opens it. */
  store: text('store'),
});

/** Whether the operating system's key store is used, as a manager decided. The newest counts; without any it is. */
export const keyStoreChoice = sqliteTable('key_store_choice', {
  id: text('id').primaryKey(),
  at: text('at').notNull(),
  personId: text('person_id').notNull().references(() => person.id),
  used: integer('used', { mode: 'boolean' }).notNull(),
  reason: text('reason').notNull(),
});

/** Public keys of other laboratories, so that a report of theirs can be told from one of nobody. */
export const knownKey = sqliteTable('known_key', {
  id: text('id').primaryKey(),
  publicKey: text('public_key').notNull(),
  laboratory: text('laboratory').notNull(),
  /** How it was made sure that the key is theirs. */
  checkedHow: text('checked_how').notNull(),
  addedAt: text('added_at').notNull(),
  addedBy: text('added_by').notNull().references(() => person.id),
  /** False once the laboratory no longer trusts it. */
  active: integer('active', { mode: 'boolean' }).notNull(),
});

/** What a person proves to be with: a password or a one-time code, kept as what scrypt and HKDF make of it. */
export const credential = sqliteTable('credential', {
  /** The person's id, or "recovery" for the laboratory's recovery sheet. */
  id: text('id').primaryKey(),
  personId: text('person_id').references(() => person.id),
  /** password · code: must be replaced at the next sign-in · recovery */
  kind: text('kind').notNull(),
  /** 16 bytes, hexadecimal. */
  salt: text('salt').notNull(),
  /** Cost of scrypt it was made with (RFC 7914): N, r, p. */
  costN: integer('cost_n').notNull(),
  costR: integer('cost_r').notNull(),
  costP: integer('cost_p').notNull(),
  /** 32 bytes, hexadecimal. */
  proof: text('proof').notNull(),
  /** X25519 public key that the password opens, 64 hexadecimal digits: the laboratory's key is sealed to it. */
  sealTo: text('seal_to').notNull(),
  setAt: text('set_at').notNull(),
});

/**
 * Wrong attempts since the last right one, and when the last was made. Apart from the credential: its row is only written when it is set anew,
 * or an attempt would have the audit ledger vouch for a row that was altered from outside.
 */
export const wrongAttempts = sqliteTable('wrong_attempts', {
  /** Id of the credential. */
  id: text('id').primaryKey(),
  failures: integer('failures').notNull(),
  failedAt: text('failed_at').notNull(),
});

/** Signed statements of how far the ledgers had come. */
export const checkpoint = sqliteTable('checkpoint', {
  id: text('id').primaryKey(),
  at: text('at').notNull(),
  /** Canonical JSON of app/signature/checkpoint-statement.ts: exactly what was signed. */
  statement: text('statement').notNull(),
  keyId: text('key_id').notNull().references(() => signingKey.id),
  /** Ed25519, 128 hexadecimal digits. */
  signature: text('signature').notNull(),
});

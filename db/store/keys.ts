import { desc, eq, ne, sql } from 'drizzle-orm';
import type { KnownKeyView, SigningKeyView } from '../../app/contract/keys.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { fingerprintOf, publicKeyFromHex } from '../../app/signature/fingerprint.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { keyStoreChoice, keyWrap, knownKey, signingKey } from '../schema/index.ts';
import { writeWraps, type Wrap } from './key-wraps.ts';
import { personById } from './people.ts';
import { notFound, refused } from './refusals.ts';

export type NewKey = { readonly id: string; readonly publicKey: string; readonly reason: string };
export type NewKnownKey = { readonly id: string; readonly publicKey: string; readonly laboratory: string; readonly checkedHow: string };

export type KeysStore = {
  /** The key that signs, or null before one was made. */
  current(): Promise<SigningKeyView | null>;
  /** All of the laboratory's own, the newest first. */
  list(): Promise<SigningKeyView[]>;
  /** Keeps a new key, which signs from now on, with the closed copies of its private part. */
  create(change: Change, key: NewKey, wraps: readonly Wrap[]): Promise<SigningKeyView>;
  wraps(keyId: string): Promise<Wrap[]>;
  /** Copies of the keys that no longer sign. */
  wrapsOfOthers(keyId: string): Promise<Wrap[]>;
  /** Writes closed copies anew. Does nothing where there are none. */
  putWraps(change: Change, wraps: readonly Wrap[]): Promise<void>;
  /** Whether the system's key store is to be used: yes, until a manager decides otherwise. */
  storeIsWanted(): Promise<boolean>;
  /** Keeps a manager's decision, with the copies closed as it says. */
  chooseStore(change: Change, choice: { readonly used: boolean; readonly reason: string }, wraps: readonly Wrap[]): Promise<void>;
  /** Those that are trusted first, by name. */
  known(): Promise<KnownKeyView[]>;
  keepKnown(change: Change, key: NewKnownKey): Promise<Result<KnownKeyView, Failure>>;
  dropKnown(change: Change, keyId: string): Promise<Result<{ done: true }, Failure>>;
};

const fingerprint = (publicKey: string): string => {
  const bytes = publicKeyFromHex(publicKey);
  return bytes === null ? '' : fingerprintOf(bytes);
};

/** The laboratory's own keys, the newest first. */
export function signingKeys(db: ReadDb | WriteTx): SigningKeyView[] {
  return db.orm.select().from(signingKey).orderBy(desc(sql`rowid`)).all().map((row, i) => ({
    id: row.id, publicKey: row.publicKey, fingerprint: fingerprint(row.publicKey), createdAt: row.createdAt,
    createdBy: row.createdBy === null ? '' : personById(db, row.createdBy)?.name ?? '', reason: row.reason, current: i === 0,
  }));
}

/** What the audit ledger says of closed copies: who can open one, from whom it was taken, and which ones the system's key store holds as well. */
function factsOf(wraps: readonly Wrap[]): Record<string, string[]> {
  const stored = wraps.filter((wrap) => wrap.store !== null && wrap.sealed !== '').map((wrap) => wrap.id);
  return {
    openedBy: wraps.filter((wrap) => wrap.sealed !== '').map((wrap) => wrap.id), takenFrom: wraps.filter((wrap) => wrap.sealed === '').map((wrap) => wrap.id),
    ...(stored.length > 0 && { inKeyStore: stored }),
  };
}

const wrapOf = ({ madeAt: _madeAt, ...wrap }: typeof keyWrap.$inferSelect): Wrap => wrap;

const knownView = (row: typeof knownKey.$inferSelect): KnownKeyView => ({
  id: row.id, publicKey: row.publicKey, fingerprint: fingerprint(row.publicKey), laboratory: row.laboratory, checkedHow: row.checkedHow, addedAt: row.addedAt, active: row.active,
});

const knownById = (db: ReadDb | WriteTx, id: string) => db.orm.select().from(knownKey).where(eq(knownKey.id, id)).get();

export function createKeysStore(handle: StoreHandle, newId: () => string): KeysStore {
  return {
    async current() { return signingKeys(handle.read)[0] ?? null; },
    async list() { return signingKeys(handle.read); },
    create: (change, key, wraps) => handle.transact((tx) => {
      tx.orm.insert(signingKey).values({ ...key, createdAt: change.at, createdBy: change.personId }).run();
      writeWraps(tx, change.at, wraps);
      appendAudit(tx, change, { subject: key.id, caseId: null, content: { publicKey: key.publicKey, reason: key.reason, openedBy: wraps.map((wrap) => wrap.id) } });
      return signingKeys(tx)[0]!;
    }),
    async wraps(keyId) {
      return handle.read.orm.select().from(keyWrap).where(eq(keyWrap.keyId, keyId)).all().map(wrapOf);
    },
    async wrapsOfOthers(keyId) {
      return handle.read.orm.select().from(keyWrap).where(ne(keyWrap.keyId, keyId)).all().map(wrapOf);
    },
    putWraps: async (change, wraps) => {
      if (wraps.length === 0) return;
      await handle.transact((tx) => {
        writeWraps(tx, change.at, wraps);
        appendAudit(tx, change, { subject: wraps[0]!.keyId, caseId: null, content: factsOf(wraps) });
      });
    },
    async storeIsWanted() {
      return handle.read.orm.select().from(keyStoreChoice).orderBy(desc(sql`rowid`)).limit(1).get()?.used ?? true;
    },
    chooseStore: (change, { used, reason }, wraps) => handle.transact((tx) => {
      if (change.personId === null) throw new Error('chooseStore: a manager decides it');
      tx.orm.insert(keyStoreChoice).values({ id: newId(), at: change.at, personId: change.personId, used, reason }).run();
      writeWraps(tx, change.at, wraps);
      appendAudit(tx, change, { subject: 'system key store', caseId: null, content: { used, reason, ...factsOf(wraps) } });
    }),
    async known() {
      return handle.read.orm.select().from(knownKey).orderBy(desc(knownKey.active), knownKey.laboratory).all().map(knownView);
    },
    keepKnown: (change, key) => handle.transactResult<KnownKeyView, Failure>((tx) => {
      if (change.personId === null) throw new Error('keepKnown: a key is kept by a person');
      const before = knownById(tx, key.id);
      if (before?.active === true) return refused(`This key is kept already, as that of ${before.laboratory}.`, 'Nothing needs to be done.');
      const row = { ...key, addedAt: change.at, addedBy: change.personId, active: true };
      tx.orm.insert(knownKey).values(row).onConflictDoUpdate({ target: knownKey.id, set: row }).run();
      appendAudit(tx, change, { subject: key.id, caseId: null, content: { ...key } });
      return ok(knownView(knownById(tx, key.id)!));
    }),
    dropKnown: (change, keyId) => handle.transactResult<{ done: true }, Failure>((tx) => {
      const before = knownById(tx, keyId);
      if (before === undefined) return notFound('That key');
      tx.orm.update(knownKey).set({ active: false }).where(eq(knownKey.id, keyId)).run();
      appendAudit(tx, change, { subject: keyId, caseId: null, content: { laboratory: before.laboratory, trusted: false } });
      return ok({ done: true });
    }),
  };
}

import { eq } from 'drizzle-orm';
import type { Change } from '../change.ts';
import type { JsonValue } from '../../app/custody/canonical-json.ts';
import type { StoreHandle, WriteTx, ReadDb } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { credential, wrongAttempts } from '../schema/index.ts';
import { writeWraps, type Wrap } from './key-wraps.ts';

export type CredentialKind = 'password' | 'code' | 'recovery';

/** What a password leaves behind. `salt`, `proof` and `sealTo` are hexadecimal digits; `id` is the person's, or RECOVERY. */
export type Credential = {
  readonly id: string; readonly kind: CredentialKind;
  readonly salt: string; readonly costN: number; readonly costR: number; readonly costP: number;
  readonly proof: string; readonly sealTo: string;
  /** Wrong attempts since the last right one. */
  readonly failures: number; readonly failedAt: string | null;
};

export type NewCredential = Omit<Credential, 'failures' | 'failedAt'>;

/** Id of the credential that belongs to no person but to the sheet that is kept apart. */
export const RECOVERY = 'recovery';

export type CredentialEntry = { readonly credentials: readonly NewCredential[]; readonly wraps: readonly Wrap[]; readonly subject: string; readonly content: Readonly<Record<string, JsonValue>> };

export type CredentialsStore = {
  get(id: string): Promise<Credential | null>;
  list(): Promise<Credential[]>;
  /** Sets credentials anew and writes closed copies of the key, with one entry in the audit ledger about `subject`. */
  set(change: Change, entry: CredentialEntry): Promise<void>;
  /** Writes down a wrong attempt. */
  noteFailure(change: Change, id: string): Promise<void>;
  /** Writes down that the person signed in, and forgets wrong attempts. */
  noteSuccess(change: Change, id: string, content: Readonly<Record<string, JsonValue>>): Promise<void>;
};

function credentialById(db: ReadDb | WriteTx, id: string): Credential | null {
  const row = db.orm.select().from(credential).where(eq(credential.id, id)).get();
  if (row === undefined) return null;
  const { personId: _personId, setAt: _setAt, kind, ...rest } = row;
  const wrong = db.orm.select().from(wrongAttempts).where(eq(wrongAttempts.id, id)).get();
  return { ...rest, kind: kind as CredentialKind, failures: wrong?.failures ?? 0, failedAt: wrong?.failedAt ?? null };
}

function writeCredential(tx: WriteTx, at: string, fresh: NewCredential): void {
  const row = { ...fresh, personId: fresh.id === RECOVERY ? null : fresh.id, setAt: at };
  tx.orm.insert(credential).values(row).onConflictDoUpdate({ target: credential.id, set: row }).run();
  forgetWrong(tx, fresh.id);
}

function forgetWrong(tx: WriteTx, id: string): void {
  tx.orm.delete(wrongAttempts).where(eq(wrongAttempts.id, id)).run();
}

/** Writes credentials, copies of the key and the audit entry inside the caller's transaction. */
export function setCredentials(tx: WriteTx, change: Change, { credentials, wraps, subject, content }: CredentialEntry): void {
  for (const fresh of credentials) writeCredential(tx, change.at, fresh);
  writeWraps(tx, change.at, wraps);
  appendAudit(tx, change, { subject, caseId: null, content });
}

export function createCredentialsStore(handle: StoreHandle): CredentialsStore {
  return {
    async get(id) { return credentialById(handle.read, id); },
    async list() { return handle.read.all<{ id: string }>('SELECT id FROM credential ORDER BY rowid').map((row) => credentialById(handle.read, row.id)!); },
    set: (change, entry) => handle.transact((tx) => { setCredentials(tx, change, entry); }),
    noteFailure: (change, id) => handle.transact((tx) => {
      const before = credentialById(tx, id);
      if (before === null) throw new Error('noteFailure: there is no such credential');
      const failures = before.failures + 1;
      const row = { id, failures, failedAt: change.at };
      tx.orm.insert(wrongAttempts).values(row).onConflictDoUpdate({ target: wrongAttempts.id, set: row }).run();
      appendAudit(tx, change, { subject: id, caseId: null, content: { refused: 'wrong password', inARow: failures } });
    }),
    noteSuccess: (change, id, content) => handle.transact((tx) => {
      forgetWrong(tx, id);
      appendAudit(tx, change, { subject: id, caseId: null, content });
    }),
  };
}

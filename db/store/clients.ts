import { eq } from 'drizzle-orm';
import type { ClientView } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import { fold } from '../fold.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { client } from '../schema/index.ts';
import { notFound } from './refusals.ts';

export type ClientInput = { readonly name: string; readonly address: string; readonly email: string; readonly phone: string; readonly note: string };

export type ClientsStore = {
  /** At most CLIENT_SEARCH_LIMIT, by name; text is looked for in name, address, e-mail and telephone, without regard to case and accents. */
  search(text: string): Promise<ClientView[]>;
  save(change: Change, input: ClientInput & { readonly id: string | null }): Promise<Result<ClientView, Failure>>;
};

export const CLIENT_SEARCH_LIMIT = 50;

const VIEW = `SELECT c.id, c.name, c.address, c.email, c.phone, c.note, (SELECT count(*) FROM case_record r WHERE r.client_id = c.id) AS cases FROM client c`;

export function clientById(db: ReadDb | WriteTx, id: string): ClientView | null {
  return db.get<ClientView>(`${VIEW} WHERE c.id = ?`, [id]) ?? null;
}

/** Writes a new client and the audit entry inside the caller's transaction; returns the id. */
export function insertClient(tx: WriteTx, change: Change, id: string, input: ClientInput): string {
  const { name, address, email, phone, note } = input;
  tx.orm.insert(client).values({ id, name, address, email, phone, note, createdAt: change.at }).run();
  appendAudit(tx, change, { subject: id, caseId: null, content: { client: { name, address, email, phone, note } } });
  return id;
}

function amendClient(tx: WriteTx, change: Change, id: string, input: ClientInput): Result<ClientView, Failure> {
  const before = clientById(tx, id);
  if (!before) return notFound('That client');
  const { name, address, email, phone, note } = input;
  tx.orm.update(client).set({ name, address, email, phone, note }).where(eq(client.id, id)).run();
  appendAudit(tx, change, {
    subject: id, caseId: null,
    content: { before: { name: before.name, address: before.address, email: before.email, phone: before.phone, note: before.note }, after: { name, address, email, phone, note } },
  });
  return ok(clientById(tx, id)!);
}

export function createClientsStore(handle: StoreHandle, newId: () => string): ClientsStore {
  return {
    async search(text) {
      return handle.read.all<ClientView>(
        `${VIEW} WHERE @text = '' OR instr(fold(c.name || ' ' || c.address || ' ' || c.email || ' ' || c.phone), @text) > 0
         ORDER BY c.name COLLATE NOCASE LIMIT ${CLIENT_SEARCH_LIMIT}`, { text: fold(text.trim()) });
    },
    save: (change, input) => handle.transactResult<ClientView, Failure>((tx) =>
      input.id === null ? ok(clientById(tx, insertClient(tx, change, newId(), input))!) : amendClient(tx, change, input.id, input)),
  };
}

import { eq } from 'drizzle-orm';
import type { PersonView } from '../../app/contract/casebook.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { Role } from '../../app/domain/role.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { person } from '../schema/index.ts';
import { setCredentials, type NewCredential } from './credentials.ts';
import { invalidFields, notFound, refused } from './refusals.ts';

export type PersonInput = { readonly name: string; readonly initials: string; readonly roles: readonly Role[]; readonly active: boolean };

export type PeopleStore = {
  /** Those who work here first, by name. */
  list(): Promise<PersonView[]>;
  get(id: string): Promise<PersonView | null>;
  /** `code`: what a new person signs in with once, written along with them under the id it was made for. */
  save(change: Change, input: PersonInput & { readonly id: string | null }, code?: NewCredential): Promise<Result<PersonView, Failure>>;
  /** Writes into the audit ledger that this person states to work at a window from now on. */
  actAs(change: Change, personId: string): Promise<Result<PersonView, Failure>>;
};

type Row = typeof person.$inferSelect;

const viewOf = (row: Row): PersonView => ({ id: row.id, name: row.name, initials: row.initials, roles: JSON.parse(row.roles) as Role[], active: row.active });

export function personById(db: ReadDb | WriteTx, id: string): PersonView | null {
  const row = db.orm.select().from(person).where(eq(person.id, id)).get();
  return row ? viewOf(row) : null;
}

/** Writes a new person and the audit entry inside the caller's transaction; returns the id. */
export function insertPerson(tx: WriteTx, change: Change, id: string, input: PersonInput): string {
  tx.orm.insert(person).values({ id, name: input.name, initials: input.initials, roles: JSON.stringify(input.roles), active: input.active, createdAt: change.at }).run();
  appendAudit(tx, change, { subject: id, caseId: null, content: { name: input.name, initials: input.initials, roles: input.roles, active: input.active } });
  return id;
}

function otherWithInitials(tx: WriteTx, initials: string, id: string | null): string | null {
  return tx.get<{ name: string }>('SELECT name FROM person WHERE initials = ? COLLATE NOCASE AND active = 1 AND id IS NOT ?', [initials, id])?.name ?? null;
}

const anotherManager = (tx: WriteTx, id: string): boolean =>
  tx.all<{ roles: string }>('SELECT roles FROM person WHERE active = 1 AND id <> ?', [id]).some((row) => (JSON.parse(row.roles) as Role[]).includes('manager'));

function amendPerson(tx: WriteTx, change: Change, id: string, input: PersonInput): Result<PersonView, Failure> {
  const before = personById(tx, id);
  if (!before) return notFound('That person');
  const staysManager = input.active && input.roles.includes('manager');
  if (before.active && before.roles.includes('manager') && !staysManager && !anotherManager(tx, id)) {
    return refused(`${before.name} is the only manager.`, 'Give another person the role of manager first, so that somebody can still change people and settings.');
  }
  tx.orm.update(person).set({ name: input.name, initials: input.initials, roles: JSON.stringify(input.roles), active: input.active }).where(eq(person.id, id)).run();
  const { id: _id, ...was } = before;
  appendAudit(tx, change, { subject: id, caseId: null, content: { before: was, after: { name: input.name, initials: input.initials, roles: input.roles, active: input.active } } });
  return ok(personById(tx, id)!);
}

export function createPeopleStore(handle: StoreHandle, newId: () => string): PeopleStore {
  return {
    async list() {
      return handle.read.all<{ id: string }>('SELECT id FROM person ORDER BY active DESC, name COLLATE NOCASE').map((row) => personById(handle.read, row.id)!);
    },
    async get(id) { return personById(handle.read, id); },
    save: (change, input, code) => handle.transactResult<PersonView, Failure>((tx) => {
      const other = input.active ? otherWithInitials(tx, input.initials, input.id) : null;
      if (other !== null) return invalidFields({ initials: `${other} has these initials already; records are told apart by them.` });
      if (input.id !== null) return amendPerson(tx, change, input.id, input);
      const id = insertPerson(tx, change, code?.id ?? newId(), input);
      if (code !== undefined) setCredentials(tx, change, { credentials: [code], wraps: [], subject: id, content: { code: 'given to a new person' } });
      return ok(personById(tx, id)!);
    }),
    actAs: (change, personId) => handle.transactResult<PersonView, Failure>((tx) => {
      const who = personById(tx, personId);
      if (!who) return notFound('That person');
      if (!who.active) return refused(`${who.name} no longer works here.`, 'Choose someone else, or ask a manager to make the person active again.');
      appendAudit(tx, { ...change, personId }, { subject: personId, caseId: null, content: { name: who.name, statement: 'works at this window' } });
      return ok(who);
    }),
  };
}

import type Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import type { Result } from '../app/result.ts';
import { watchRows, type WrittenRows } from './ledger/watch-rows.ts';
import * as schema from './schema/index.ts';
import { followChanges } from './search/follow-changes.ts';

type Orm = BetterSQLite3Database<typeof schema>;
type Parameter = string | number | bigint | null | Uint8Array;
type Parameters = readonly Parameter[] | Readonly<Record<string, Parameter>>;

/** A connection that may only be asked. */
export type ReadDb = {
  readonly may: 'read' | 'write';
  readonly orm: Pick<Orm, 'select' | 'selectDistinct' | '$count' | 'query'>;
  /** Rows of a SELECT written by hand: `?` with an array of values, or `@name` with an object. */
  all<Row>(sql: string, parameters?: Parameters): Row[];
  get<Row>(sql: string, parameters?: Parameters): Row | undefined;
  /** The same rows as lists of values in the order of the columns: cheaper where there are a million. */
  values<Row extends readonly unknown[]>(sql: string, parameters?: Parameters): Row[];
};

/** The same inside a transaction that may change records. Nothing outside `transact` ever gets one. */
export type WriteTx = Omit<ReadDb, 'may' | 'orm'> & {
  readonly may: 'write';
  readonly orm: Orm;
  run(sql: string, parameters?: Parameters): { changes: number };
  /** Rows that the next entry of the audit ledger has to vouch for. */
  readonly written: WrittenRows;
};

/** What a store is made from. Every method of a store is one transaction. */
export type StoreHandle = {
  readonly read: ReadDb;
  /**
   * One immediate transaction; what `work` throws undoes it. `work` is synchronous: an asynchronous one is refused and undone,
   * and so is one that wrote records without an entry in the audit ledger after them.
   */
  transact<T>(work: (tx: WriteTx) => T): Promise<T>;
  /** The same, done when it returns, what it throws thrown: while a casebook is being opened. */
  transactNow<T>(work: (tx: WriteTx) => T): T;
  /** The same for work that may refuse: a failure undoes everything it did. */
  transactResult<T, E>(work: (tx: WriteTx) => Result<T, E>): Promise<Result<T, E>>;
};

/** Carries a refusal out of a transaction, so that SQLite rolls back. */
class Undo extends Error {
  readonly refusal: unknown;
  constructor(refusal: unknown) {
    super('transaction undone by a refusal');
    this.refusal = refusal;
  }
}

/** How many prepared statements are kept; the program has fewer. */
const KEPT_STATEMENTS = 300;

function statements(sqlite: Database.Database, arranged: (statement: Database.Statement) => Database.Statement = (statement) => statement): (sql: string) => Database.Statement {
  const kept = new Map<string, Database.Statement>();
  return (sql) => {
    const known = kept.get(sql);
    if (known) return known;
    const made = arranged(sqlite.prepare(sql));
    if (kept.size >= KEPT_STATEMENTS) kept.clear();
    kept.set(sql, made);
    return made;
  };
}

/** The handle that stores work through, over one open connection. */
export function createHandle(sqlite: Database.Database): StoreHandle {
  const orm = drizzle(sqlite, { schema });
  const prepare = statements(sqlite);
  const all = <Row>(sql: string, parameters: Parameters = []): Row[] => prepare(sql).all(parameters) as Row[];
  const get = <Row>(sql: string, parameters: Parameters = []): Row | undefined => prepare(sql).get(parameters) as Row | undefined;
  const prepareRaw = statements(sqlite, (statement) => statement.raw());
  const values = <Row extends readonly unknown[]>(sql: string, parameters: Parameters = []): Row[] => prepareRaw(sql).all(parameters) as Row[];
  const read: ReadDb = { may: 'read', orm, all, get, values };
  const run = (sql: string, parameters: Parameters = []): { changes: number } => prepare(sql).run(parameters);
  const written = watchRows(sqlite);
  const tx: WriteTx = { may: 'write', orm, all, get, values, run, written };

  function transactNow<T>(work: (tx: WriteTx) => T): T {
    return sqlite.transaction(() => {
      written.forget();
      const value = work(tx);
      if (value instanceof Promise) throw new TypeError('a transaction must be synchronous');
      const left = written.tablesLeft();
      if (left.length > 0) throw new Error(`no entry of the audit ledger vouches for what was written into ${left.join(', ')}`);
      followChanges(tx, written.all());
      return value;
    }).immediate();
  }

  const transact = async <T>(work: (tx: WriteTx) => T): Promise<T> => transactNow(work);

  return {
    read,
    transact,
    transactNow,
    async transactResult<T, E>(work: (tx: WriteTx) => Result<T, E>): Promise<Result<T, E>> {
      try {
        return await transact((inner) => {
          const outcome = work(inner);
          if (!outcome.ok) throw new Undo(outcome);
          return outcome;
        });
      } catch (e) {
        if (e instanceof Undo) return e.refusal as Result<T, E>;
        throw e;
      }
    },
  };
}

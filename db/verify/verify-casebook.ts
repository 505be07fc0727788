import type { Verification } from '../../app/contract/casebook.ts';
import type { ReadDb } from '../handle.ts';
import { VOUCHED_TABLES } from '../ledger/vouched-tables.ts';
import { verifyCheckpoints, type Outside } from './checkpoints.ts';
import { verifyDatabase, verifyGuards } from './database.ts';
import { verifyAudit, verifyCustody } from './ledgers.ts';
import { faultyPart, VerifyCancelled, type Pace } from './part.ts';
import type { Runner } from './pieces.ts';
import { verifyRecords } from './records.ts';
import { verifyRows } from './rows.ts';

export type VerifyWhat = {
  /** UTC, ISO 8601 with milliseconds: stands on the outcome. */
  readonly at: string;
  /** What is known of the ledgers from outside the file. */
  readonly outside: Outside;
  /** Guards that had to be put back when the casebook was opened. */
  readonly guardsRestored: readonly string[];
  /** The file was not checked when it was opened: what belongs to none of its tables is looked at too. */
  readonly wholeFile: boolean;
};

const COUNT = `SELECT (SELECT count(*) FROM custody_entry) + (SELECT count(*) FROM audit_entry) + (SELECT count(*) FROM raw_record)
  + (SELECT count(*) FROM spectrum) + (SELECT count(*) FROM report)
  + ${VOUCHED_TABLES.map(({ table }) => `(SELECT count(*) FROM ${table})`).join(' + ')} AS n`;

/** How many entries, records and rows there are to look at. */
export const howMany = (db: ReadDb): number => db.get<{ n: number }>(COUNT)!.n;

/** SQLite found the file itself broken while reading; a plain error says that a table is not laid out as it was. */
export function isDamage(error: unknown): error is Error {
  return error instanceof Error && 'code' in error && /^SQLITE_(ERROR$|CORRUPT|NOTADB|IOERR)/.test(String(error.code));
}

async function everyPart(db: ReadDb, what: VerifyWhat, runner: Runner, pace: Pace): Promise<Verification['parts']> {
  // Pieces of it can't be cut: where others can work meanwhile they are begun first, so that nobody waits for them at the end.
  const early = runner.ahead > 1 ? verifyDatabase(db, what.wholeFile, runner) : null;
  early?.catch(() => {});
  const { part: audit, vouched, heads } = await verifyAudit(db, runner);
  const custody = await verifyCustody(db, heads, runner);
  const records = await verifyRecords(db, vouched, runner);
  const rows = await verifyRows(db, vouched, runner);
  const checkpoints = await verifyCheckpoints(db, what.outside, pace);
  const guards = verifyGuards(db, what.guardsRestored);
  const database = await (early ?? verifyDatabase(db, what.wholeFile, runner));
  return [custody, audit, ...records, rows, checkpoints, guards, database];
}

/** Recomputes everything a casebook vouches for; `runner` does the large parts, `db` is asked for the small ones. Null where it was stopped. */
export async function verifyCasebook(db: ReadDb, what: VerifyWhat, runner: Runner, pace: Pace): Promise<Verification | null> {
  try {
    const parts = await everyPart(db, what, runner, pace);
    return { sound: parts.every((part) => part.sound), at: what.at, parts };
  } catch (e) {
    if (e instanceof VerifyCancelled) return null;
    if (!isDamage(e)) throw e;
    return { sound: false, at: what.at, parts: [faultyPart('database', 0, `The file is damaged and can’t be read to the end: ${e.message}.`)] };
  }
}

import type { Verification } from '../../app/contract/casebook.ts';
import type { Outside } from './checkpoints.ts';
import { verifyDatabase } from './database.ts';
import { verifyAudit, verifyCustody } from './ledgers.ts';
import { faultyPart, VerifyCancelled } from './part.ts';
import type { Runner } from './pieces.ts';
import { verifyRecords } from './records.ts';
import { verifyRows } from './rows.ts';

export type VerifyWhat = {
  /** UTC, ISO 8601 with milliseconds: stands on the outcome. */
  readonly at: string;
  /** What is known of the ledgers from outside the file. */
  readonly outside: Outside;
  /** Guards that had to be put back when the casebook was opened, and triggers of others that were taken out. */
  readonly guardsRestored: readonly string[];
  /** What is defined in the file otherwise than the program defines it, a sentence for each. */
  readonly strange: readonly string[];
  /** The file was not checked when it was opened: what belongs to none of its tables is looked at too. */
  readonly wholeFile: boolean;
};

/** SQLite found the file itself broken while reading; a plain error says that a table is not laid out as it was. */
export function isDamage(error: unknown): error is Error {
  return error instanceof Error && 'code' in error && /^SQLITE_(ERROR$|CORRUPT|NOTADB|IOERR)/.test(String(error.code));
}

async function everyPart(what: VerifyWhat, runner: Runner): Promise<Verification['parts']> {
  const layout = await runner.run({ kind: 'layout' });
  // Pieces of it can't be cut: where others can work meanwhile they are begun first, so that nobody waits for them at the end.
  const checkDatabase = () => verifyDatabase(layout, what, runner);
  const early = runner.ahead > 1 ? checkDatabase() : null;
  early?.catch(() => {});
  const { part: audit, vouched, heads } = await verifyAudit(layout, runner);
  const custody = await verifyCustody(layout, heads, runner);
  const records = await verifyRecords(layout, vouched, runner);
  const rows = await verifyRows(layout, vouched, runner);
  const checkpoints = await runner.run({ kind: 'checkpoints', outside: what.outside });
  const guards = await runner.run({ kind: 'guards', restored: what.guardsRestored });
  const database = await (early ?? checkDatabase());
  return [custody, audit, ...records, rows, checkpoints, guards, database];
}

/** Recomputes everything a casebook vouches for; `runner` reads it. Null where it was stopped. */
export async function verifyCasebook(what: VerifyWhat, runner: Runner): Promise<Verification | null> {
  try {
    const parts = await everyPart(what, runner);
    return { sound: parts.every((part) => part.sound), at: what.at, parts };
  } catch (e) {
    if (e instanceof VerifyCancelled) return null;
    if (!isDamage(e)) throw e;
    return { sound: false, at: what.at, parts: [faultyPart('database', 0, `The file is damaged and can’t be read to the end: ${e.message}.`)] };
  }
}

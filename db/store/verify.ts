import type { Verification } from '../../app/contract/casebook.ts';
import type { StoreHandle } from '../handle.ts';
import { NOTHING_OUTSIDE, verifyCheckpoints, type Outside } from '../verify/checkpoints.ts';
import { verifyDatabase, verifyGuards } from '../verify/database.ts';
import { verifyLedgers } from '../verify/ledgers.ts';
import { faultyPart, VerifyCancelled, type Pace } from '../verify/part.ts';
import { verifyRecords } from '../verify/records.ts';
import { verifyRows } from '../verify/rows.ts';
import { VOUCHED_TABLES } from '../ledger/vouched-tables.ts';

export type VerifyOptions = {
  /** UTC, ISO 8601 with milliseconds: stands on the outcome. */
  readonly at: string;
  /** What is known of the ledgers from outside the file. */
  readonly outside?: Outside;
  readonly signal?: AbortSignal;
  /** Called as work goes on, with what was checked so far and what there is. */
  readonly progress?: (done: number, total: number) => void;
};

export type VerifyStore = {
  /** Recomputes everything a casebook vouches for, in slices that leave the window free. Null where it was stopped by the signal. */
  verify(options: VerifyOptions): Promise<Verification | null>;
};

/** Longest stretch without letting anything else run. */
const BREATH_MS = 12;

const COUNT = `SELECT (SELECT count(*) FROM custody_entry) + (SELECT count(*) FROM audit_entry) + (SELECT count(*) FROM raw_record)
  + (SELECT count(*) FROM spectrum) + (SELECT count(*) FROM report)
  + ${VOUCHED_TABLES.map(({ table }) => `(SELECT count(*) FROM ${table})`).join(' + ')} AS n`;

function paced(options: VerifyOptions, total: number): Pace {
  let before = 0;
  let done = 0;
  let breathed = performance.now();
  return async (checked) => {
    done += checked > before ? checked - before : checked;
    before = checked;
    if (performance.now() - breathed < BREATH_MS) return;
    options.progress?.(Math.min(done, total), total);
    await new Promise((resolve) => { setImmediate(resolve); });
    breathed = performance.now();
    if (options.signal?.aborted) throw new VerifyCancelled();
  };
}

/** SQLite found the file itself broken while reading; a plain error says that a table is not laid out as it was. */
function isDamage(error: unknown): error is Error {
  return error instanceof Error && 'code' in error && /^SQLITE_(ERROR$|CORRUPT|NOTADB|IOERR)/.test(String(error.code));
}

export function createVerifyStore(handle: StoreHandle, guardsRestored: readonly string[]): VerifyStore {
  const db = handle.read;
  return {
    async verify(options) {
      const pace = paced(options, db.get<{ n: number }>(COUNT)!.n);
      try {
        const { parts: ledgers, vouched } = await verifyLedgers(db, pace);
        const parts = [...ledgers, ...await verifyRecords(db, vouched, pace), await verifyRows(db, vouched, pace), await verifyCheckpoints(db, options.outside ?? NOTHING_OUTSIDE, pace), verifyGuards(db, guardsRestored), await verifyDatabase(db, pace)];
        return { sound: parts.every((part) => part.sound), at: options.at, parts };
      } catch (e) {
        if (e instanceof VerifyCancelled) return null;
        if (!isDamage(e)) throw e;
        return { sound: false, at: options.at, parts: [faultyPart('database', 0, `The file is damaged and can’t be read to the end: ${e.message}.`)] };
      }
    },
  };
}

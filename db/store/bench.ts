import type { Output } from '../../app/contract/index.ts';
import { addDays, dayInZone, hasPassed } from '../../app/custody/calendar.ts';
import type { ReadDb, StoreHandle } from '../handle.ts';
import { CASE_ROW_COLUMNS, CASE_ROW_FROM, completeCaseRows, type CaseBase } from './case-rows.ts';
import { theLaboratory } from './laboratory.ts';

export type BenchView = Output<'bench.today'>;
export type BenchStore = {
  /** What to do at `at` (UTC ISO 8601) for the person at the window, or for nobody in particular. */
  today(at: string, personId: string | null): Promise<BenchView>;
};

/** Rows of each part; a bench with more to do than this reads the list of cases. */
const MOST = 500;

/** Walks the index on state and due date: at start it must not read closed cases. */
export const BENCH_CASES = `SELECT ${CASE_ROW_COLUMNS} FROM ${CASE_ROW_FROM} WHERE n.state = @state ORDER BY n.due_on IS NULL, n.due_on, n.received_at LIMIT ${MOST}`;

const TO_CONFIRM = `SELECT s.id AS stoneId, s.case_id AS caseId, n.number AS caseNumber, s.label, c.conclusion, p.name AS by, c.at
  FROM case_record n JOIN stone s ON s.case_id = n.id
  JOIN conclusion c ON c.stone_id = s.id AND c.ordinal = (SELECT max(ordinal) FROM conclusion k WHERE k.stone_id = s.id)
  JOIN person p ON p.id = c.person_id
  WHERE n.state IN ('open', 'reported') AND c.person_id IS NOT @personId AND NOT EXISTS (SELECT 1 FROM confirmation f WHERE f.conclusion_id = c.id)
  ORDER BY c.at LIMIT ${MOST}`;

const INSTRUMENTS_TO_CHECK = `SELECT count(*) AS n FROM instrument i WHERE i.active = 1 AND NOT EXISTS (
  SELECT 1 FROM instrument_check k WHERE k.rowid = (SELECT j.rowid FROM instrument_check j WHERE j.instrument_id = i.id ORDER BY j.at DESC, j.rowid DESC LIMIT 1)
    AND k.passed = 1 AND julianday(@at) - julianday(k.at) <= i.check_every_days)`;

function count(db: ReadDb, sql: string, parameters: Record<string, string> = {}): number {
  return db.get<{ n: number }>(sql, parameters)!.n;
}

/** Walks the partial index of what ever left the house; the last hand of each decides. */
const OUT_NOW = `SELECT json_extract(e.content, '$.dueBack') AS dueBack FROM custody_entry e WHERE json_extract(e.content, '$.outside') = 1 AND NOT EXISTS (
  SELECT 1 FROM custody_entry l WHERE l.item_id = e.item_id AND l.seq > e.seq AND json_extract(l.content, '$.event') IN ('handed-over', 'taken-back', 'returned'))`;

function house(db: ReadDb, today: string): BenchView['house'] {
  // The conditions are those of the partial indexes, word for word, so that only the indexes are read.
  const returned = count(db, `SELECT count(*) AS n FROM custody_entry WHERE json_extract(content, '$.event') = 'returned'`);
  const out = db.all<{ dueBack: string | null }>(OUT_NOW);
  const compared = count(db, `SELECT count(*) AS n FROM custody_entry WHERE json_extract(content, '$.differs') IS NOT NULL`);
  const differing = count(db, `SELECT count(*) AS n FROM custody_entry WHERE json_extract(content, '$.differs') = 1`);
  return {
    itemsInCustody: count(db, 'SELECT count(*) AS n FROM item') - returned, itemsOut: out.length, itemsOverdue: out.filter((one) => hasPassed(one.dueBack, today)).length,
    weightsAgree: compared - differing, weightsCompared: compared,
  };
}

function counts(db: ReadDb, at: string): BenchView['counts'] {
  return {
    cases: count(db, 'SELECT count(*) AS n FROM case_record'), stones: count(db, 'SELECT count(*) AS n FROM stone'), reports: count(db, 'SELECT count(*) AS n FROM report'),
    instrumentsToCheck: count(db, INSTRUMENTS_TO_CHECK, { at }),
    // Ledger numbers have no gaps, so the last one is the count.
    custodyEntries: count(db, 'SELECT coalesce(max(seq), 0) AS n FROM custody_entry'), auditEntries: count(db, 'SELECT coalesce(max(seq), 0) AS n FROM audit_entry'),
  };
}

export function createBenchStore(handle: StoreHandle): BenchStore {
  return {
    async today(at, personId) {
      const db = handle.read;
      const { zone, settings } = theLaboratory(db);
      const today = dayInZone(at, zone);
      const soon = addDays(today, settings.dueSoonDays);
      const open = completeCaseRows(db, db.all<CaseBase>(BENCH_CASES, { state: 'open' }));
      const isSoon = (due: string | null): boolean => due !== null && due >= today && due <= soon;
      return {
        today,
        overdue: open.filter((row) => hasPassed(row.dueOn, today)),
        dueSoon: open.filter((row) => isSoon(row.dueOn)),
        later: open.filter((row) => !hasPassed(row.dueOn, today) && !isSoon(row.dueOn)),
        waiting: completeCaseRows(db, db.all<CaseBase>(BENCH_CASES, { state: 'reported' })),
        toConfirm: db.all<BenchView['toConfirm'][number]>(TO_CONFIRM, { personId }),
        house: house(db, today), counts: counts(db, at),
        drafts: db.all<BenchView['drafts'][number]>('SELECT key, updated_at AS updatedAt FROM draft ORDER BY updated_at DESC LIMIT 100'),
      };
    },
  };
}

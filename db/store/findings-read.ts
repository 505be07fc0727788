import type { FindingView } from '../../app/contract/work.ts';
import type { Strength, Supports } from '../../app/domain/finding.ts';
import type { InstrumentState } from '../../app/domain/instrument-state.ts';
import type { MethodId } from '../../app/domain/method.ts';
import { runCounts } from '../../app/runs/run-counts.ts';
import type { ReadDb, WriteTx } from '../handle.ts';

type Row = {
  id: string; run_id: string | null; run_number: number | null; run_method: string | null; instrument_state: string | null;
  origin: string; code: string; statement: string; strength: string; supports: string; method: string; caution: string; source: string;
  state: string; reason: string; decided_by: string | null; decided_at: string | null;
  outdated: number;
};

/** `outdated`: a newer analysis of the same curve no longer holds this finding in the same words. */
const SELECT = `
  SELECT f.id, f.run_id, r.number AS run_number, r.method AS run_method, r.instrument_state, f.origin, f.code, f.statement, f.strength, f.supports,
         f.method, f.caution, f.source, f.state, f.reason, p.name AS decided_by, f.decided_at,
         (f.analysis_id IS NOT NULL AND EXISTS (
            SELECT 1 FROM analysis own JOIN analysis newest ON newest.rowid = (SELECT MAX(a.rowid) FROM analysis a WHERE a.spectrum_id = own.spectrum_id)
            WHERE own.id = f.analysis_id AND newest.id <> own.id AND NOT EXISTS (
              SELECT 1 FROM json_each(newest.result, '$.findings') j
              WHERE json_extract(j.value, '$.code') = f.code AND json_extract(j.value, '$.statement') = f.statement))) AS outdated
  FROM finding f LEFT JOIN test_run r ON r.id = f.run_id LEFT JOIN person p ON p.id = f.decided_by`;

const OUTDATED = 'The newest analysis of this curve no longer says the same.';

function viewOf(row: Row): FindingView {
  const counts = row.run_id === null || runCounts(row.run_method as MethodId, row.instrument_state as InstrumentState);
  return {
    id: row.id, runId: row.run_id, run: row.run_number === null ? null : `R${row.run_number}`,
    code: row.code, statement: row.statement, strength: row.strength as Strength, supports: row.supports as Supports, method: row.method as MethodId,
    ...(row.caution === '' ? {} : { caution: row.caution }), ...(row.source === '' ? {} : { source: row.source }),
    origin: row.origin as FindingView['origin'], state: row.state as FindingView['state'], reason: row.reason,
    decidedBy: row.decided_by, decidedAt: row.decided_at, counts,
    ...(row.outdated === 1 && row.state !== 'replaced' ? { remark: OUTDATED } : {}),
  };
}

/** All findings of a stone, in the order they were made; what a newer analysis replaced is among them. */
export function findingsOfStone(db: ReadDb | WriteTx, stoneId: string): FindingView[] {
  return db.all<Row>(`${SELECT} WHERE f.stone_id = @stoneId ORDER BY f.rowid`, { stoneId }).map(viewOf);
}

export function findingById(db: ReadDb | WriteTx, id: string): FindingView | null {
  const row = db.get<Row>(`${SELECT} WHERE f.id = @id`, { id });
  return row === undefined ? null : viewOf(row);
}

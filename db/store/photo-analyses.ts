import type { Failure } from '../../app/contract/failure.ts';
import { photoAnalysisView, type PhotoAnalysisContent, type PhotoAnalysisView } from '../../app/contract/images.ts';
import type { Result } from '../../app/result.ts';
import { ok } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { photoAnalysis, photoAnalysisRun } from '../schema/index.ts';
import { notFound } from './refusals.ts';
import { putRun, type NewRun } from './runs-write.ts';

type PersonChange = Change & { readonly personId: string };

export type PhotoAnalysesStore = {
  ofItem(itemId: string): Promise<PhotoAnalysisView[]>;
  get(analysisId: string): Promise<PhotoAnalysisView | null>;
  keep(change: PersonChange, itemId: string, content: PhotoAnalysisContent): Promise<Result<PhotoAnalysisView, Failure>>;
  /** One transaction for all runs; stones that already have a run from this analysis are passed over. */
  giveRuns(change: PersonChange, analysisId: string, runs: readonly NewRun[]): Promise<Result<PhotoAnalysisView, Failure>>;
};

type Row = { id: string; item_id: string; kind: string; version: string; parameters: string; result: string; at: string; by: string };

const SELECT = `SELECT a.id, a.item_id, a.kind, a.version, a.parameters, a.result, a.at, p.name AS by FROM photo_analysis a JOIN person p ON p.id = a.person_id`;

function viewOf(db: ReadDb | WriteTx, row: Row): PhotoAnalysisView {
  const runs = db.all<{ stoneId: string; number: number }>('SELECT l.stone_id AS stoneId, r.number FROM photo_analysis_run l JOIN test_run r ON r.id = l.run_id WHERE l.analysis_id = @id ORDER BY r.number', { id: row.id });
  return photoAnalysisView.parse({
    id: row.id, itemId: row.item_id, at: row.at, by: row.by, version: row.version, runs: runs.map(({ stoneId, number }) => ({ stoneId, run: `R${number}` })),
    content: { kind: row.kind, parameters: JSON.parse(row.parameters) as unknown, result: JSON.parse(row.result) as unknown },
  });
}

function byId(db: ReadDb | WriteTx, id: string): PhotoAnalysisView | null {
  const row = db.get<Row>(`${SELECT} WHERE a.id = @id`, { id });
  return row === undefined ? null : viewOf(db, row);
}

function keep(tx: WriteTx, newId: () => string, change: PersonChange, itemId: string, content: PhotoAnalysisContent): Result<PhotoAnalysisView, Failure> {
  const piece = tx.get<{ case_id: string }>('SELECT case_id FROM item WHERE id = @itemId', { itemId });
  if (piece === undefined) return notFound('This item');
  const id = newId();
  const { kind, parameters, result } = content;
  tx.orm.insert(photoAnalysis).values({
    id, caseId: piece.case_id, itemId, kind, version: result.version, parameters: JSON.stringify(parameters), result: JSON.stringify(result), at: change.at, personId: change.personId,
  }).run();
  appendAudit(tx, change, { subject: id, caseId: piece.case_id, content: { photographsMeasured: { item: itemId, kind, version: result.version, parameters } } });
  return ok(byId(tx, id)!);
}

function giveRuns(tx: WriteTx, newId: () => string, change: PersonChange, analysisId: string, runs: readonly NewRun[]): Result<PhotoAnalysisView, Failure> {
  const piece = tx.get<{ case_id: string }>('SELECT case_id FROM photo_analysis WHERE id = @analysisId', { analysisId });
  if (piece === undefined) return notFound('This analysis');
  const given = new Set(tx.all<{ stone_id: string }>('SELECT stone_id FROM photo_analysis_run WHERE analysis_id = @analysisId', { analysisId }).map((row) => row.stone_id));
  const made: string[] = [];
  for (const run of runs.filter(({ stoneId }) => !given.has(stoneId))) {
    const runId = putRun(tx, newId, change, run);
    if (runId === null) return notFound('A stone of this analysis');
    tx.orm.insert(photoAnalysisRun).values({ id: newId(), caseId: piece.case_id, analysisId, stoneId: run.stoneId, runId }).run();
    made.push(runId);
  }
  appendAudit(tx, change, { subject: analysisId, caseId: piece.case_id, content: { runsFromPhotographs: made.length } });
  return ok(byId(tx, analysisId)!);
}

/** What was measured on photographs, and the runs that stones were given from it. Rows are only added. */
export function createPhotoAnalysesStore(handle: StoreHandle, newId: () => string): PhotoAnalysesStore {
  return {
    async ofItem(itemId) { return handle.read.all<Row>(`${SELECT} WHERE a.item_id = @itemId ORDER BY a.rowid DESC`, { itemId }).map((row) => viewOf(handle.read, row)); },
    async get(analysisId) { return byId(handle.read, analysisId); },
    keep: (change, itemId, content) => handle.transactResult<PhotoAnalysisView, Failure>((tx) => keep(tx, newId, change, itemId, content)),
    giveRuns: (change, analysisId, runs) => handle.transactResult<PhotoAnalysisView, Failure>((tx) => giveRuns(tx, newId, change, analysisId, runs)),
  };
}

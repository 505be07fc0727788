import { analysisParameters, type AnalysisParameters, type AnalysisResult } from '../../app/spectra/analysis.ts';
import type { Spectrum, XUnit, YUnit } from '../../app/spectra/spectrum.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { statementOfOne } from '../../app/runs/merge-findings.ts';
import type { MethodId } from '../../app/domain/method.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { analysis, spectrum } from '../schema/index.ts';
import { proposeFindings, replaceProposals } from './findings-write.ts';
import { notFound } from './refusals.ts';
import { curveDigest, packFloats, unpackFloats } from './spectra-arrays.ts';

export type NewCurve = Spectrum & { readonly title: string; readonly unitStated: boolean };

/** A curve as stored, with what is needed to analyse it again. */
export type StoredSpectrum = {
  readonly id: string; readonly caseId: string; readonly stoneId: string; readonly runId: string; readonly runNumber: number;
  readonly method: MethodId; readonly laserNm: number | null; readonly title: string;
  readonly curve: Spectrum;
  /** Parameters of the newest analysis, or null where there is none. */
  readonly parameters: AnalysisParameters | null;
};

/** Writes one curve inside the caller's transaction; returns its id and the SHA-256 over its points. */
export function putSpectrum(tx: WriteTx, newId: () => string, place: { runId: string; runFileId: string; ordinal: number }, curve: NewCurve): { id: string; sha256: string } {
  const id = newId();
  const x = packFloats(curve.x);
  const y = packFloats(curve.y);
  const sha256 = curveDigest(x, y);
  tx.orm.insert(spectrum).values({
    id, ...place, title: curve.title, xUnit: curve.xUnit, yUnit: curve.yUnit, unitStated: curve.unitStated,
    points: curve.x.length, x, y, sha256,
  }).run();
  return { id, sha256 };
}

/** Writes one analysis inside the caller's transaction and returns its id. */
export function putAnalysis(tx: WriteTx, newId: () => string, change: Change & { personId: string }, spectrumId: string, result: AnalysisResult): string {
  const id = newId();
  tx.orm.insert(analysis).values({
    id, spectrumId, pipeline: result.pipeline, tables: result.tables, parameters: JSON.stringify(result.parameters),
    result: JSON.stringify(result), at: change.at, personId: change.personId,
  }).run();
  return id;
}

type Row = {
  id: string; case_id: string; stone_id: string; run_id: string; number: number; method: string; laser_nm: number | null; title: string;
  x_unit: string; y_unit: string; x: Buffer; y: Buffer; sha256: string; parameters: string | null;
};

/** Refuses where the stored points no longer have the digest that was stored beside them. */
export function loadSpectrum(db: ReadDb | WriteTx, id: string): Result<StoredSpectrum, Failure> {
  const row = db.get<Row>(`
    SELECT s.id, r.case_id, r.stone_id, s.run_id, r.number, r.method, r.laser_nm, s.title, s.x_unit, s.y_unit, s.x, s.y, s.sha256,
           (SELECT a.parameters FROM analysis a WHERE a.spectrum_id = s.id ORDER BY a.rowid DESC LIMIT 1) AS parameters
    FROM spectrum s JOIN test_run r ON r.id = s.run_id WHERE s.id = @id`, { id });
  if (row === undefined) return notFound('This spectrum');
  if (curveDigest(row.x, row.y) !== row.sha256) {
    return err({
      code: 'unreadable', message: `The stored points of “${row.title}” in run R${row.number} no longer have the digest they were kept with.`,
      next: 'Do not rely on this curve. Verify the casebook, and restore a backup in which it is sound.',
    });
  }
  return ok({
    id: row.id, caseId: row.case_id, stoneId: row.stone_id, runId: row.run_id, runNumber: row.number,
    method: row.method as MethodId, laserNm: row.laser_nm, title: row.title,
    curve: { x: unpackFloats(row.x), y: unpackFloats(row.y), xUnit: row.x_unit as XUnit, yUnit: row.y_unit as YUnit },
    parameters: row.parameters === null ? null : analysisParameters.parse(JSON.parse(row.parameters)),
  });
}

export type SpectraStore = {
  get(id: string): Promise<Result<StoredSpectrum, Failure>>;
  /**
   * Adds an analysis; the older ones stay. Findings that were only proposed from older ones become 'replaced'; decided
   * ones stay, and what the new analysis says in the same words is not proposed twice.
   */
  addAnalysis(change: Change & { personId: string }, spectrum: StoredSpectrum, result: AnalysisResult): Promise<string>;
};

export function createSpectraStore(handle: StoreHandle, newId: () => string): SpectraStore {
  return {
    async get(id) { return loadSpectrum(handle.read, id); },
    addAnalysis: (change, stored, result) => handle.transact((tx) => {
      const analysisId = putAnalysis(tx, newId, change, stored.id, result);
      const { replaced, kept } = replaceProposals(tx, stored.id, analysisId);
      const fresh = result.findings.filter((fact) => !kept.some((old) => old.code === fact.code && statementOfOne(old.statement) === fact.statement));
      const proposed = proposeFindings(tx, newId, { at: change.at, caseId: stored.caseId, stoneId: stored.stoneId, runId: stored.runId, analysisId, origin: 'analysis' }, fresh);
      appendAudit(tx, change, {
        subject: stored.id, caseId: stored.caseId,
        content: { run: `R${stored.runNumber}`, analysis: analysisId, parameters: result.parameters, pipeline: result.pipeline, tables: result.tables, proposed: proposed.length, replaced, kept: kept.length },
      });
      return analysisId;
    }),
  };
}

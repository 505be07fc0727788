import { readError, readWarning, type RunView, type SpectrumView } from '../../app/contract/work.ts';
import type { InstrumentState } from '../../app/domain/instrument-state.ts';
import type { MethodId } from '../../app/domain/method.ts';
import { observation as observationSchema } from '../../app/domain/observation.ts';
import { readsLine } from '../../app/runs/reads-line.ts';
import { runWarnings } from '../../app/runs/run-warnings.ts';
import { analysisResult } from '../../app/spectra/analysis.ts';
import type { XUnit, YUnit } from '../../app/spectra/spectrum.ts';
import type { ReadDb, WriteTx } from '../handle.ts';

type RunRow = {
  id: string; number: number; stone_id: string; method: string; instrument_id: string | null; instrument: string | null; instrument_state: string;
  laser_nm: number | null; temperature_k: number | null; integration_ms: number | null; resolution: number | null;
  observation: string | null; note: string; at: string; person: string; initials: string;
};
type FileRow = {
  run_id: string; raw_record_id: string; name: string; sha256: string; size: number; outcome: string; reader: string; warnings: string; error: string | null;
};
type SpectrumRow = {
  id: string; run_id: string; title: string; x_unit: string; y_unit: string; points: number; unit_stated: number; file_name: string;
  analysis_id: string | null; analysed_at: string | null; result: string | null;
};

const RUNS = `
  SELECT r.id, r.number, r.stone_id, r.method, r.instrument_id, i.name AS instrument, r.instrument_state, r.laser_nm, r.temperature_k,
         r.integration_ms, r.resolution, r.observation, r.note, r.at, p.name AS person, p.initials
  FROM test_run r LEFT JOIN instrument i ON i.id = r.instrument_id JOIN person p ON p.id = r.person_id
  WHERE r.stone_id = @stoneId ORDER BY r.number`;

const FILES = `
  SELECT f.run_id, f.raw_record_id, w.name, w.sha256, w.size, f.outcome, f.reader, f.warnings, f.error
  FROM run_file f JOIN raw_record w ON w.id = f.raw_record_id JOIN test_run r ON r.id = f.run_id
  WHERE r.stone_id = @stoneId ORDER BY f.rowid`;

const SPECTRA = `
  SELECT s.id, s.run_id, s.title, s.x_unit, s.y_unit, s.points, s.unit_stated, w.name AS file_name, a.id AS analysis_id, a.at AS analysed_at, a.result
  FROM spectrum s JOIN run_file f ON f.id = s.run_file_id JOIN raw_record w ON w.id = f.raw_record_id JOIN test_run r ON r.id = s.run_id
  LEFT JOIN analysis a ON a.rowid = (SELECT MAX(n.rowid) FROM analysis n WHERE n.spectrum_id = s.id)
  WHERE r.stone_id = @stoneId ORDER BY r.number, s.ordinal`;

function fileView(row: FileRow): RunView['files'][number] {
  return {
    rawRecordId: row.raw_record_id, name: row.name, sha256: row.sha256, size: row.size, outcome: row.outcome as 'read' | 'refused', reader: row.reader,
    warnings: readWarning.array().parse(JSON.parse(row.warnings)), error: row.error === null ? null : readError.parse(JSON.parse(row.error)),
  };
}

function spectrumView(row: SpectrumRow): SpectrumView {
  return {
    id: row.id, title: row.title, xUnit: row.x_unit as XUnit, yUnit: row.y_unit as YUnit, points: row.points, unitStated: row.unit_stated === 1, fileName: row.file_name,
    analysis: row.analysis_id === null || row.result === null || row.analysed_at === null ? null
      : { id: row.analysis_id, at: row.analysed_at, result: analysisResult.parse(JSON.parse(row.result)) },
  };
}

function byRun<Row extends { run_id: string }>(rows: readonly Row[]): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const group = groups.get(row.run_id);
    if (group === undefined) groups.set(row.run_id, [row]);
    else group.push(row);
  }
  return groups;
}

/** All runs of a stone in their order, each with its files, its curves and the newest analysis of each curve. */
export function runsOfStone(db: ReadDb | WriteTx, stoneId: string): RunView[] {
  const rows = db.all<RunRow>(RUNS, { stoneId });
  const files = byRun(db.all<FileRow>(FILES, { stoneId }));
  const spectra = byRun(db.all<SpectrumRow>(SPECTRA, { stoneId }));
  const inTime = rows.map((row) => ({
    number: `R${row.number}`, method: row.method as MethodId, at: row.at,
    observation: row.observation === null ? null : observationSchema.parse(JSON.parse(row.observation)),
  }));
  return rows.map((row, index) => {
    const run = inTime[index]!;
    const state = row.instrument_state as InstrumentState;
    const fileViews = (files.get(row.id) ?? []).map(fileView);
    const spectrumViews = (spectra.get(row.id) ?? []).map(spectrumView);
    const warnings = runWarnings(run, state, inTime);
    return {
      id: row.id, number: run.number, stoneId: row.stone_id, method: run.method, instrument: row.instrument, instrumentId: row.instrument_id, instrumentState: state,
      laserNm: row.laser_nm, temperatureK: row.temperature_k, integrationMs: row.integration_ms, resolution: row.resolution,
      observation: run.observation, note: row.note, at: row.at, by: row.person, byInitials: row.initials, files: fileViews, spectra: spectrumViews,
      reads: readsLine({
        observation: run.observation, analyses: spectrumViews.map((view) => view.analysis?.result ?? null),
        refusedFiles: fileViews.filter((file) => file.outcome === 'refused').length, files: fileViews.length,
      }) + (warnings.some((warning) => warning.code === 'short-wave-first') ? ', seen after short-wave light' : ''),
      warnings,
    };
  });
}

export type KeptBytes = { readonly sha256: string; readonly run: string; readonly name: string };

/** Which of these digests a case already keeps, and where: in a run, or as a photograph. */
export function bytesKept(db: ReadDb | WriteTx, caseId: string, digests: readonly string[]): Map<string, KeptBytes> {
  const rows = db.all<{ sha256: string; name: string; number: number | null }>(`
    SELECT w.sha256, w.name, MIN(r.number) AS number
    FROM raw_record w LEFT JOIN run_file f ON f.raw_record_id = w.id LEFT JOIN test_run r ON r.id = f.run_id
    WHERE w.case_id = @caseId AND w.sha256 IN (SELECT value FROM json_each(@digests)) GROUP BY w.id ORDER BY w.rowid DESC`,
  { caseId, digests: JSON.stringify(digests) });
  return new Map(rows.map((row) => [row.sha256, { sha256: row.sha256, run: row.number === null ? 'a photograph' : `R${row.number}`, name: row.name }]));
}

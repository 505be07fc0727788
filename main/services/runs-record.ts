import type { ParsedInput } from '../../app/contract/index.ts';
import type { InstrumentMemory, InstrumentView } from '../../app/contract/work.ts';
import { errorInNm } from '../../app/calibration/scale-of-run.ts';
import { scaleMap } from '../../app/calibration/scale-fit.ts';
import { METHODS } from '../../app/domain/method.ts';
import { findingsFromObservation } from '../../app/evidence/findings-from-observation.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { checkRun } from '../../app/runs/check-run.ts';
import { mergeFindings } from '../../app/runs/merge-findings.ts';
import { runCounts } from '../../app/runs/run-counts.ts';
import { analysisParameters, analysableMethod, type AnalysisParameters } from '../../app/spectra/analysis.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { KeptCalibration } from '../../db/store/calibrations-read.ts';
import type { KeptBytes } from '../../db/store/runs-read.ts';
import type { StonePlace } from '../../db/store/runs.ts';
import type { NewRunFile } from '../../db/store/runs-write.ts';
import type { FileOutcome } from '../workers/tasks/read-and-analyse.ts';
import { notFound } from './failures.ts';
import { withHouseScale } from './house-scale.ts';
import { mediaTypeOf } from './runs-media-type.ts';
import { readFiles, type IncomingFile } from './runs-read-files.ts';
import type { Services } from './service.ts';
import { asFailure, changing, type ChangingWork, type WorkDeps } from './work-context.ts';

type RecordInput = ParsedInput<'runs.record'>;

/** Parameters of the analysis that a run of this method begins with, or null where the method has no curves; the instrument's calibration says how far its scale is to be trusted. */
export function parametersOf(run: Pick<RecordInput, 'method' | 'laserNm' | 'temperatureK' | 'resolution'>, calibration: KeptCalibration | null): AnalysisParameters | null {
  const method = analysableMethod.safeParse(run.method);
  if (!method.success) return null;
  return analysisParameters.parse({
    method: method.data, laserNm: run.laserNm ?? undefined, temperatureK: run.temperatureK ?? undefined, resolution: run.resolution ?? undefined,
    ...(calibration === null ? {} : scaleParameters(calibration, run.laserNm)),
  });
}

function scaleParameters({ id: calibrationId, at, unit, use, error, fit }: KeptCalibration, laserNm: number | null): Partial<AnalysisParameters> {
  const calibrationErrorNm = errorInNm(unit, error, laserNm);
  return { ...(use === 'correct' ? { scale: { calibrationId, at, fit: scaleMap.parse(fit) } } : {}), ...(calibrationErrorNm === null ? {} : { calibrationErrorNm }) };
}

/** Where a curve's unit is neither said by the file, nor stated, nor remembered: it must be asked for before the run is kept. */
function unitsMissing(files: readonly IncomingFile[], outcomes: readonly FileOutcome[]): Failure | null {
  const fields: Record<string, string> = {};
  outcomes.forEach(({ reading }, index) => {
    if (!reading.ok || reading.value.blocks.every((block) => block.xUnit !== 'unstated')) return;
    fields[`files.${index}.xUnit`] = `“${files[index]!.name}” does not say the unit of its axis: state it once, the instrument remembers.`;
  });
  const first = Object.values(fields)[0];
  return first === undefined ? null : { code: 'invalid-input', message: first, next: 'State the unit of the axis, then record the run.', fields };
}

function readFile(file: IncomingFile, outcome: FileOutcome, kept: KeptBytes | undefined): NewRunFile {
  const { sha256, reading, unitStated, analyses } = outcome;
  const shared = kept === undefined ? [] : [{ code: 'already-kept', message: `The same bytes as “${file.name}” are already kept in this case (${kept.run}, “${kept.name}”); the record is shared.` }];
  const common = { name: file.name, bytes: file.bytes, sha256 };
  if (!reading.ok) {
    return { ...common, mediaType: mediaTypeOf(file.name, null), outcome: 'refused', format: null, reader: '', warnings: shared, error: reading.error, curves: [] };
  }
  const { format, reader, blocks, warnings } = reading.value;
  const notAnalysed = analyses.flatMap((analysis, index) => analysis.ok ? [] : [{ code: `not-analysed:${analysis.error.code}`, message: `${blocks[index]!.title || file.name} was not analysed: ${analysis.error.message}` }]);
  return {
    ...common, mediaType: mediaTypeOf(file.name, format), outcome: 'read', format, reader, warnings: [...shared, ...warnings, ...notAnalysed], error: null,
    curves: blocks.map((block, index) => {
      const analysis = analyses[index];
      return {
        curve: { x: block.x, y: block.y, xUnit: block.xUnit, yUnit: block.yUnit, title: block.title, unitStated: unitStated[index] ?? false },
        analysis: analysis?.ok === true ? analysis.value : null,
      };
    }),
  };
}

/** Files beside an observation are kept as they are: pictures, notes, what the instrument wrote. */
const keepUnread = (file: IncomingFile, outcome: FileOutcome): NewRunFile => ({
  name: file.name, bytes: file.bytes, sha256: outcome.sha256, mediaType: mediaTypeOf(file.name, null),
  outcome: 'read', format: null, reader: '', warnings: [], error: null, curves: [],
});

/** The same line in every file of a run is one finding, not one for each. */
function withMergedFindings(files: readonly NewRunFile[]): NewRunFile[] {
  const merged = mergeFindings(files.flatMap((file) => file.curves.map(({ analysis }) => analysis?.findings ?? [])));
  let next = 0;
  return files.map((file) => ({ ...file, curves: file.curves.map((entry) => ({ ...entry, findings: merged[next++]! })) }));
}

/** The instrument's memory with what this run stated, or null where nothing is new. */
function learned(instrument: InstrumentView | null, input: RecordInput, outcomes: readonly FileOutcome[]): InstrumentMemory | null {
  if (instrument === null) return null;
  const before = instrument.remembers;
  const stated = input.files.filter((file, index) => file.xUnit !== undefined && outcomes[index]?.unitStated.includes(true) === true).at(-1)?.xUnit;
  const ordinate = input.files.filter((file, index) => file.yUnit !== undefined && outcomes[index]?.reading.ok === true).at(-1)?.yUnit;
  const after: InstrumentMemory = {
    laserNm: input.laserNm ?? before.laserNm, temperatureK: input.temperatureK ?? before.temperatureK, integrationMs: input.integrationMs ?? before.integrationMs,
    resolution: input.resolution ?? before.resolution, xUnit: stated ?? before.xUnit, yUnit: ordinate ?? before.yUnit,
  };
  const changed = (Object.keys(after) as (keyof InstrumentMemory)[]).some((key) => after[key] !== before[key]);
  return changed ? after : null;
}

async function readForRun(input: RecordInput, place: StonePlace, instrument: InstrumentView | null, work: ChangingWork): Promise<Result<{ files: NewRunFile[]; outcomes: FileOutcome[] }, Failure>> {
  const holdsCurves = METHODS[input.method].yields === 'spectrum';
  const calibration = instrument === null || !holdsCurves ? null : await work.stores.calibrations.current(instrument.id, work.at);
  const begun = holdsCurves ? parametersOf(input, calibration) : null;
  const parameters = begun === null ? null : await withHouseScale(begun, work);
  const outcomes = await readFiles(work, 'runs.record', input.files, instrument?.remembers ?? null, parameters);
  if (!outcomes.ok) return outcomes;
  if (!holdsCurves) return ok({ files: input.files.map((file, index) => keepUnread(file, outcomes.value[index]!)), outcomes: outcomes.value });
  const missing = unitsMissing(input.files, outcomes.value);
  if (missing !== null) return err(missing);
  const kept = await work.stores.runs.kept(place.caseId, outcomes.value.map((outcome) => outcome.sha256));
  const files = input.files.map((file, index) => readFile(file, outcomes.value[index]!, kept.get(outcomes.value[index]!.sha256)));
  return ok({ files: withMergedFindings(files), outcomes: outcomes.value });
}

export function createRecordRunService(deps: WorkDeps): Services['runs.record'] {
  return changing(deps, 'runs.record', async (input, work) => {
    const { stores, change, at } = work;
    const place = await stores.runs.place(input.stoneId);
    if (place === null) return notFound('This stone');
    const instrument = input.instrumentId === null ? null : await stores.instruments.get(input.instrumentId, at);
    if (input.instrumentId !== null && instrument === null) return notFound('This instrument');
    const allowed = checkRun({ ...input, fileCount: input.files.length }, place, instrument);
    if (!allowed.ok) return asFailure(allowed.error);

    const read = await readForRun(input, place, instrument, work);
    if (!read.ok) return read;
    const earlier = await stores.runs.ofStone(input.stoneId);
    const others = earlier.filter((run) => runCounts(run.method, run.instrumentState)).flatMap((run) => run.observation === null ? [] : [run.observation]);
    const observed = input.observation === null ? [] : findingsFromObservation(input.observation, { colourClass: place.colourClass, mounted: place.mounted, others });

    const recorded = await stores.runs.record(change, {
      stoneId: input.stoneId, method: input.method, instrumentId: input.instrumentId, instrumentState: instrument?.state ?? 'no-instrument',
      laserNm: input.laserNm, temperatureK: input.temperatureK, integrationMs: input.integrationMs, resolution: input.resolution,
      cautions: input.cautions, observation: input.observation, note: input.note,
      files: read.value.files, observed, remembers: learned(instrument, input, read.value.outcomes),
    });
    return recorded === null ? notFound('This stone') : ok(recorded);
  });
}
